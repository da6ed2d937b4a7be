from dataclasses import replace
from fractions import Fraction

import pytest

from instruments.compass import Compass
from instruments.consoles import Console
from instruments.mixtures import Zone
from instruments.organ import (
    COUPLING_WORDS,
    Coupler,
    Coupling,
    Division,
    Keyboard,
    KeyboardKind,
    Organ,
    Tremulant,
    coupler_words,
)
from instruments.tone import Construction
from tests.builders import a_stop, an_organ

PEDALS = Keyboard("pedal", "Pedal", KeyboardKind.PEDAL, Compass(0, 29))
GREAT = Keyboard("great", "Great", KeyboardKind.MANUAL, Compass(0, 57))


@pytest.mark.parametrize(("octave", "shift"), [(16, -12), (8, 0), (4, 12)])
def test_a_coupler_shifts_by_its_octave(octave, shift):
    assert Coupler("one", "One", "swell", "great", octave).shift == shift


def test_a_division_has_the_compass_of_its_home_keyboard():
    organ = Organ("One", (PEDALS, GREAT), (Division("pedal", "Pedal", "pedal"),))

    assert organ.home_compass(organ.division("pedal")) == PEDALS.compass


def test_a_floating_division_has_the_compass_of_the_first_manual():
    organ = Organ("One", (PEDALS, GREAT), (Division("echo", "Echo", None),))

    assert organ.home_compass(organ.division("echo")) == GREAT.compass


def test_without_a_manual_a_floating_division_has_what_there_is():
    organ = Organ("One", (PEDALS,), (Division("echo", "Echo", None),))

    assert organ.home_compass(organ.division("echo")) == PEDALS.compass


def test_keyboards_and_divisions_are_found_by_id():
    organ = an_organ()

    assert organ.keyboard("swell").name == "Swell"
    assert organ.division("swell").keyboard == "swell"


def test_keyboards_lie_as_the_organ_has_them_until_somebody_says_how():
    assert [one.id for one in an_organ().keyboards_from_top()] == ["great", "swell", "pedal"]


def test_keyboards_lie_as_the_console_says_and_the_rest_below():
    organ = replace(an_organ(), console=Console(keyboards=("swell",)))

    assert [one.id for one in organ.keyboards_from_top()] == ["swell", "great", "pedal"]


def test_every_way_of_coupling_is_told_in_words():
    assert set(COUPLING_WORDS) == set(Coupling)


@pytest.mark.parametrize("find", [Organ.keyboard, Organ.division])
def test_an_id_that_leads_nowhere_is_a_bug(find):
    with pytest.raises(KeyError, match="solo"):
        find(an_organ(), "solo")


def test_stops_come_in_console_order_with_their_division():
    organ = an_organ(great=["Principal 8", "Octave 4"], swell=["Bourdon 16"])

    order = [(division.id, stop.name) for division, stop in organ.stops()]

    assert order == [("great", "Principal"), ("great", "Octave"), ("swell", "Bourdon")]


def test_everything_that_can_be_drawn_has_an_id():
    great = Division("great", "Great", "great", False, (a_stop(),), (Tremulant("shake", "Shake"),))
    organ = Organ("One", (GREAT,), (great,), (Coupler("octave", "Octave", "great", "great", 4),))

    assert organ.control_ids() == {"principal-8", "shake", "octave"}
    assert [(division.id, one.id) for division, one in organ.tremulants()] == [("great", "shake")]


def test_a_plain_stop_is_neither_compound_nor_undulating():
    assert not a_stop().is_compound
    assert not a_stop().is_undulating


def test_a_mixture_is_compound():
    assert replace(a_stop(), composition=(Zone(0, (Fraction(2),)),)).is_compound


def test_a_celeste_is_undulating():
    assert replace(a_stop(), construction=Construction.UNDULATING).is_undulating


def test_an_organ_can_be_a_key_of_a_cache():
    assert hash(an_organ()) == hash(an_organ())


@pytest.mark.parametrize(
    ("coupler", "words"),
    [
        ("Swell to Great", "The Great keyboard also plays the Swell."),
        ("Swell to Great 4", "The Great keyboard also plays the Swell, an octave higher."),
        ("Swell to Great 16", "The Great keyboard also plays the Swell, an octave lower."),
        ("Great to Pedal", "The feet also play the Great."),
        ("Great to Great 4", "Each key of the Great also plays the octave above."),
        ("Great to Great 16", "Each key of the Great also plays the octave below."),
        ("Great to Great", "Each key of the Great also plays itself."),
        (
            "Swell Unison Off",
            "The Swell keyboard no longer plays the Swell at its own pitch.",
        ),
    ],
)
def test_a_coupler_is_told_in_words(coupler, words):
    organ = an_organ(couplers=[coupler])

    assert coupler_words(organ, organ.couplers[0]) == words
