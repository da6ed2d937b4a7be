import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import tremulant_shakes_both
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Flute 8 (flute)"],
    swell=["Oboe 8 (reed narrow-conical)"],
    echo=["Vox Humana 8 (reed short)"],
    pedal=["Bourdon 16 (flute stopped)"],
    floating=["echo"],
    couplers=["Swell to Great", "Echo to Great", "Echo to Swell", "Swell to Pedal"],
    tremulants=["great", "swell", "echo"],
)
SOLO, CHORDS = Music(texture=Texture.SOLO), Music()
IN_THE_LEFT = Music(texture=Texture.SOLO, solo=Player.LEFT)
HANDS = {"right": "swell", "left": "great", "feet": "pedal"}
BOTH = ("flute-8", "swell/oboe-8", "swell-to-great", "swell/tremulant")


@pytest.mark.parametrize(
    "drawn",
    [
        ["flute-8", "swell/oboe-8", "swell/tremulant"],
        ["flute-8", "swell/oboe-8", "great/tremulant"],
        ["flute-8", "swell/oboe-8", "swell-to-pedal", "swell/tremulant"],
        ["flute-8", "swell/oboe-8", "swell-to-great"],
        [],
    ],
)
def test_a_tremulant_for_one_of_the_two_is_quiet(drawn):
    assert findings(tremulant_shakes_both, ORGAN, *drawn, music=SOLO, **HANDS) == []


def test_chords_are_quiet():
    assert findings(tremulant_shakes_both, ORGAN, *BOTH, music=CHORDS, **HANDS) == []


def test_without_two_keyboards_there_is_no_solo():
    assert findings(tremulant_shakes_both, ORGAN, *BOTH, music=SOLO) == []
    assert findings(tremulant_shakes_both, ORGAN, *BOTH, music=SOLO, right="swell") == []


def test_a_coupled_solo_division_shakes_both():
    (finding,) = findings(tremulant_shakes_both, ORGAN, *BOTH, music=SOLO, **HANDS)

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("swell", "great")
    assert finding.evidence.stops == ("swell/oboe-8",)
    assert finding.evidence.tremulants == ("swell/tremulant",)
    assert finding.message == (
        "The tremulant of the Swell shakes the tune on the Swell and with it Oboe 8′ under the "
        "accompaniment on the Great."
    )


def test_the_tune_may_be_in_the_left_hand():
    (finding,) = findings(tremulant_shakes_both, ORGAN, *BOTH, music=IN_THE_LEFT, **HANDS)

    assert finding.evidence.keyboards == ("great", "swell")


def test_a_floating_division_can_be_shaken_under_both():
    drawn = ["echo/vox-humana-8", "echo-to-great", "echo-to-swell", "echo/tremulant"]
    (finding,) = findings(tremulant_shakes_both, ORGAN, *drawn, music=SOLO, **HANDS)

    assert finding.evidence.stops == ("echo/vox-humana-8",)


def test_a_tune_under_the_feet_can_share_its_tremulant_with_the_hands():
    drawn = ["swell/oboe-8", "swell-to-pedal", "swell/tremulant"]
    music = Music(texture=Texture.SOLO, solo=Player.FEET)
    (finding,) = findings(tremulant_shakes_both, ORGAN, *drawn, music=music, **HANDS)

    assert finding.evidence.keyboards == ("pedal", "swell")
