import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import bass_takes_solo_colour
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ()
SOLO = Music(texture=Texture.SOLO)
BOTH = ["trumpet-8", "swell/salicional-8", "pedal/bourdon-16"]


def found(*drawn, music=SOLO, right="great", left="swell", feet="pedal"):
    return findings(
        bass_takes_solo_colour, ORGAN, *drawn, music=music, right=right, left=left, feet=feet
    )


def test_uncoupled_pedals_are_quiet():
    assert found(*BOTH) == []


def test_the_accompaniment_may_be_coupled_to_the_feet():
    assert found(*BOTH, "swell-to-pedal") == []


@pytest.mark.parametrize("texture", [Texture.CHORDS, Texture.TRIO])
def test_without_a_solo_it_is_quiet(texture):
    assert found(*BOTH, "great-to-pedal", music=Music(texture=texture)) == []


def test_feet_that_have_the_tune_take_what_they_like():
    music = Music(texture=Texture.SOLO, solo=Player.FEET)

    assert found(*BOTH, "great-to-pedal", music=music) == []


def test_both_hands_on_one_keyboard_are_quiet():
    assert found(*BOTH, "great-to-pedal", left="great") == []


def test_idle_feet_are_quiet():
    assert found(*BOTH, "great-to-pedal", feet=None) == []


def test_the_solo_under_the_feet_is_found():
    (finding,) = found(*BOTH, "great-to-pedal")

    assert finding.level is Level.WARNING
    assert finding.evidence.keyboards == ("pedal",)
    assert finding.evidence.stops == ("great/trumpet-8",)
    assert finding.evidence.couplers == ("great-to-pedal",)
    assert finding.message == (
        "Great to Pedal brings the solo’s Trumpet 8′ to the feet: "
        "the bass takes the colour of the tune."
    )


def test_a_tune_in_the_left_hand_is_found():
    music = Music(texture=Texture.SOLO, solo=Player.LEFT)
    (finding,) = found(*BOTH, "swell-to-pedal", music=music)

    assert finding.evidence.stops == ("swell/salicional-8",)
