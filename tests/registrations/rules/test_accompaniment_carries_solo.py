import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import accompaniment_carries_solo
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    pedal=["Bourdon 16"],
    solo=["Tuba 8"],
    floating=["solo"],
    couplers=["Swell to Great", "Great to Swell", "Solo to Great", "Solo to Swell"],
)
SOLO = Music(texture=Texture.SOLO)
BOTH = ["principal-8", "swell/oboe-8"]


def found(*drawn, music=SOLO, right="swell", left="great", **hands):
    return findings(
        accompaniment_carries_solo, ORGAN, *drawn, music=music, right=right, left=left, **hands
    )


def test_two_uncoupled_keyboards_are_quiet():
    assert found(*BOTH) == []


def test_the_coupler_over_an_empty_solo_division_is_quiet():
    assert found("principal-8", "swell-to-great") == []


def test_a_coupler_the_other_way_is_quiet():
    assert found(*BOTH, "great-to-swell") == []


@pytest.mark.parametrize("texture", [Texture.CHORDS, Texture.TRIO])
def test_without_a_solo_it_is_quiet(texture):
    assert found(*BOTH, "swell-to-great", music=Music(texture=texture)) == []


def test_both_hands_on_one_keyboard_are_quiet():
    assert found(*BOTH, "swell-to-great", left="swell") == []


def test_a_solo_hand_that_is_nowhere_is_quiet():
    assert found(*BOTH, "swell-to-great", right=None) == []


def test_swell_to_great_under_the_left_hand_is_found():
    (finding,) = found(*BOTH, "swell-to-great")

    assert finding.level is Level.WARNING
    assert finding.evidence.couplers == ("swell-to-great",)
    assert finding.evidence.stops == ("swell/oboe-8",)
    assert finding.message == (
        "Swell to Great brings the solo’s Oboe 8′ to the Great, where the accompaniment is played."
    )


def test_the_left_hand_can_have_the_solo():
    music = Music(texture=Texture.SOLO, solo=Player.LEFT)
    (finding,) = found(*BOTH, "great-to-swell", music=music)

    assert finding.evidence.keyboards == ("swell",)


def test_with_the_solo_in_the_feet_the_hands_accompany():
    organ = an_organ(great=["Principal 8"], pedal=["Trumpet 8"], couplers=["Pedal to Great"])
    drawn = ["principal-8", "pedal/trumpet-8", "pedal-to-great"]
    music = Music(texture=Texture.SOLO, solo=Player.FEET)
    hands = {"right": "great", "left": "great", "feet": "pedal"}

    assert len(findings(accompaniment_carries_solo, organ, *drawn, music=music, **hands)) == 1


def test_a_floating_solo_on_both_keyboards_is_found():
    drawn = ["solo/tuba-8", "solo-to-swell", "solo-to-great"]
    (finding,) = found("principal-8", *drawn)

    assert finding.evidence.couplers == ("solo-to-great",)
