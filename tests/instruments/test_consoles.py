import pytest

from instruments.consoles import (
    PANEL_WORDS,
    UNKNOWN,
    Console,
    Panel,
    Piston,
    PistonKind,
    Place,
    piston_fault,
)

GENERAL, DIVISIONAL, REVERSIBLE = PistonKind


def test_a_console_of_which_nothing_is_known_is_empty():
    assert (UNKNOWN.places, UNKNOWN.pistons, UNKNOWN.keyboards) == (frozenset(), (), ())
    assert UNKNOWN.knobs_move is None


def test_every_panel_has_its_words():
    assert set(PANEL_WORDS) == set(Panel)


def test_a_console_can_be_a_key_of_a_cache():
    places = frozenset({Place("oboe", Panel.LEFT, 1, 1)})

    assert hash(Console(places=places)) == hash(Console(places=frozenset(places)))


def test_a_control_is_found_in_its_place():
    oboe = Place("oboe", Panel.LEFT, 2, 3)

    assert Console(places=frozenset({oboe})).place("oboe") == oboe


def test_a_control_without_a_place_has_none():
    assert UNKNOWN.place("oboe") is None


def test_places_go_by_panel_and_column_from_the_top():
    low, high = Place("low", Panel.LEFT, 1, 2), Place("high", Panel.LEFT, 1, 1)
    next_column, other = Place("next", Panel.LEFT, 2, 1), Place("tab", Panel.RAIL, 1, 1)
    console = Console(places=frozenset({other, next_column, low, high}))

    assert console.places_in_order() == (high, low, next_column, other)


@pytest.mark.parametrize(
    "piston",
    [
        Piston("1", "General 1"),
        Piston("1", "Great 1", DIVISIONAL, division="great"),
        Piston("1", "Great to Pedal", REVERSIBLE, control="great-to-pedal"),
    ],
)
def test_a_piston_that_names_what_its_kind_moves_is_in_order(piston):
    assert piston_fault(piston) == ""


@pytest.mark.parametrize(
    ("piston", "word"),
    [
        (Piston("1", "One", GENERAL, division="great"), "general"),
        (Piston("1", "One", DIVISIONAL), "divisional"),
        (Piston("1", "One", DIVISIONAL, division="great", control="oboe"), "divisional"),
        (Piston("1", "One", REVERSIBLE, division="great"), "reversible"),
    ],
)
def test_a_piston_that_does_not_is_told_what_its_kind_names(piston, word):
    assert f"A {word} piston" in piston_fault(piston)
