import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import pedal_out_of_balance
from registrations.checks.rules.pedal_out_of_balance import step_db
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Open Diapason 8", "Octave 4", "Fifteenth 2", "Trumpet 8 (reed full-length)"],
    swell=["Stopped Diapason 8 (flute stopped)", "Flute 4 (flute)", "Dulciana 8 (string)"],
    pedal=[
        "Bourdon 16 (flute stopped)",
        "Bass Flute 8 (flute)",
        "Trombone 16 (reed full-length)",
        "Octave 8",
        "Drum (percussion)",
    ],
    couplers=["Great to Pedal", "Swell to Great"],
)
SOLO = Music(texture=Texture.SOLO)
IN_THE_PEDALS = Music(texture=Texture.SOLO, solo=Player.FEET)
ON_GREAT = {"right": "great", "left": "great", "feet": "pedal"}
ON_BOTH = {"right": "great", "left": "swell", "feet": "pedal"}
LOUD = ("open-diapason-8", "octave-4", "fifteenth-2", "trumpet-8")
SOFT = ("swell/stopped-diapason-8", "swell/flute-4")


@pytest.mark.parametrize(
    "drawn",
    [
        [*LOUD, "pedal/bourdon-16", "pedal/trombone-16", "pedal/octave-8"],
        [*LOUD, "pedal/bourdon-16", "great-to-pedal"],
        [*SOFT, "pedal/bourdon-16"],
        [*SOFT, "pedal/bourdon-16", "pedal/bass-flute-8"],
        ["open-diapason-8", "pedal/bourdon-16", "pedal/bass-flute-8"],
        [*LOUD],
        ["pedal/bourdon-16"],
        [*LOUD, "pedal/drum"],
        [],
    ],
)
def test_pedals_that_go_with_the_hands_are_quiet(drawn):
    assert findings(pedal_out_of_balance, ORGAN, *drawn) == []


def test_pedals_that_go_with_one_of_two_keyboards_are_quiet():
    drawn = [*LOUD, *SOFT, "pedal/bourdon-16"]

    assert findings(pedal_out_of_balance, ORGAN, *drawn) == []


def test_pedals_between_a_soft_and_a_loud_keyboard_are_quiet():
    drawn = [*LOUD, "swell/dulciana-8", "pedal/bass-flute-8", "pedal/bourdon-16"]

    assert findings(pedal_out_of_balance, ORGAN, *drawn, **ON_BOTH) == []


def test_a_tune_in_the_pedals_is_quiet():
    drawn = [*SOFT, "pedal/trombone-16", "pedal/octave-8"]

    assert findings(pedal_out_of_balance, ORGAN, *drawn, music=IN_THE_PEDALS) == []


def test_a_soft_bass_under_a_loud_solo_goes_with_the_accompaniment():
    drawn = [*LOUD, *SOFT, "pedal/bourdon-16"]

    assert findings(pedal_out_of_balance, ORGAN, *drawn, music=SOLO, **ON_BOTH) == []


def test_soft_pedals_under_loud_hands_are_found():
    (finding,) = findings(
        pedal_out_of_balance, ORGAN, *LOUD, "pedal/bourdon-16", "pedal/bass-flute-8", **ON_GREAT
    )

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("pedal", "great")
    assert dict(finding.evidence.numbers) == {"pedal_db": -3.9, "manual_db": 7.0, "step_db": 6.0}
    assert finding.message == (
        "On the Pedal, a note is about 11 dB softer than one on the Great: more than one dynamic "
        "step of five, which is 6 dB here."
    )


def test_loud_pedals_under_soft_hands_are_found():
    (finding,) = findings(pedal_out_of_balance, ORGAN, *SOFT, "pedal/trombone-16")

    assert "about 7 dB louder than one on the Swell" in finding.message


def test_loud_pedals_under_a_soft_accompaniment_are_found_whatever_the_solo_is():
    drawn = [*LOUD, *SOFT, "pedal/trombone-16", "pedal/octave-8"]
    (finding,) = findings(pedal_out_of_balance, ORGAN, *drawn, music=SOLO, **ON_BOTH)

    assert finding.evidence.keyboards == ("pedal", "swell")


def test_a_dynamic_step_is_a_fifth_of_what_an_organ_can_do():
    large = an_organ(
        great=[
            "Dulciana 8 (string)",
            *(f"Tuba {letter} 8 (reed)" for letter in "abcdefghijklmnopqrst"),
        ]
    )

    assert step_db(large) == pytest.approx((8 + 13.01 + 12) / 5, abs=0.01)


def test_a_small_organ_has_steps_that_can_be_heard():
    assert step_db(an_organ(great=["Principal 8"])) == 6.0
    assert step_db(an_organ(great=["Bells (percussion)"])) == 6.0
