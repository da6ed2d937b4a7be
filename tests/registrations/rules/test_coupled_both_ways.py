import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import coupled_both_ways
from registrations.combination import Music, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    choir=["Dulciana 8"],
    couplers=[
        "Swell to Great",
        "Great to Swell",
        "Swell to Great 4",
        "Great to Swell 4",
        "Choir to Great",
        "Great to Great 4",
    ],
)
STOPS = ["principal-8", "swell/oboe-8"]
BOTH = ["swell-to-great", "great-to-swell"]


def found(*drawn, texture=Texture.CHORDS, **hands):
    return findings(coupled_both_ways, ORGAN, *drawn, music=Music(texture=texture), **hands)


def test_one_coupler_is_quiet():
    assert found(*STOPS, "swell-to-great") == []


def test_a_coupler_that_carries_nothing_is_another_fault():
    assert found("principal-8", *BOTH) == []


def test_octave_couplers_both_ways_leave_two_sounds():
    assert found(*STOPS, "swell-to-great-4", "great-to-swell-4") == []


@pytest.mark.parametrize("more", [["choir/dulciana-8", "choir-to-great"], ["great-to-great-4"]])
def test_a_keyboard_that_sounds_something_more_is_quiet(more):
    assert found(*STOPS, *BOTH, *more) == []


def test_a_keyboard_without_a_hand_is_another_fault():
    assert found(*STOPS, *BOTH, right="great", left="great") == []


def test_two_keyboards_that_sound_the_same_are_found():
    (finding,) = found(*STOPS, *BOTH)

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("great", "swell")
    assert finding.evidence.couplers == ("great-to-swell", "swell-to-great")
    assert finding.message == (
        "Great to Swell and Swell to Great are both drawn: the Great and the Swell sound the same."
    )


@pytest.mark.parametrize(
    ("texture", "level"),
    [
        (Texture.CHORDS, Level.ADVICE),
        (Texture.SOLO, Level.WARNING),
        (Texture.TRIO, Level.WARNING),
    ],
)
def test_it_weighs_more_where_two_hands_want_two_sounds(texture, level):
    (finding,) = found(*STOPS, *BOTH, texture=texture, right="great", left="swell")

    assert finding.level is level
