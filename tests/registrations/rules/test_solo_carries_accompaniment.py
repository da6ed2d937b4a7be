import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import solo_carries_accompaniment
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Trumpet 8 (reed full-length)"],
    swell=["Salicional 8", "Octave 4"],
    solo=["Tuba 8"],
    floating=["solo"],
    couplers=["Swell to Great", "Great to Swell", "Solo to Great", "Solo to Swell"],
)
SOLO = Music(texture=Texture.SOLO)
BOTH = ["trumpet-8", "swell/salicional-8"]


def found(*drawn, music=SOLO, right="great", left="swell"):
    return findings(solo_carries_accompaniment, ORGAN, *drawn, music=music, right=right, left=left)


def test_two_uncoupled_keyboards_are_quiet():
    assert found(*BOTH) == []


def test_a_coupler_the_other_way_is_another_fault():
    assert found(*BOTH, "great-to-swell") == []


@pytest.mark.parametrize("texture", [Texture.CHORDS, Texture.TRIO])
def test_without_a_solo_it_is_quiet(texture):
    assert found(*BOTH, "swell-to-great", music=Music(texture=texture)) == []


def test_both_hands_on_one_keyboard_are_quiet():
    assert found(*BOTH, "swell-to-great", left="great") == []


def test_a_floating_solo_is_not_taken_for_the_accompaniment():
    assert found("swell/salicional-8", "solo/tuba-8", "solo-to-great") == []


def test_the_stops_of_the_left_hand_under_the_right_are_found():
    (finding,) = found(*BOTH, "swell-to-great")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.stops == ("swell/salicional-8",)
    assert finding.message == (
        "Swell to Great brings the accompaniment’s Salicional 8′ to the Great, "
        "where the tune is played."
    )


def test_the_left_hand_can_have_the_tune():
    music = Music(texture=Texture.SOLO, solo=Player.LEFT)
    (finding,) = found(*BOTH, "great-to-swell", music=music)

    assert finding.evidence.couplers == ("great-to-swell",)
