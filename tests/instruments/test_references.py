from dataclasses import replace

import pytest

from instruments.organ import Coupler, Division, Organ
from instruments.references import loose_ends
from tests.builders import a_division, a_stop, an_organ

TWO_STOPS = an_organ(great=["Principal 8", "Octave 4"])


def lending(*pairs: tuple[str, str | None]) -> Organ:
    stops = [replace(a_stop(), id=one, borrowed_from=lender) for one, lender in pairs]
    return replace(TWO_STOPS, divisions=(Division("great", "Great", "great", False, tuple(stops)),))


@pytest.mark.parametrize(
    "organ", [TWO_STOPS, an_organ(), lending(("a", None), ("b", "a"), ("c", "b"))]
)
def test_a_well_made_organ_has_no_loose_ends(organ):
    assert list(loose_ends(organ)) == []


def test_a_keyboard_id_is_used_once():
    organ = replace(TWO_STOPS, keyboards=TWO_STOPS.keyboards * 2)

    assert "The keyboard id “great” is used twice. Give each its own." in loose_ends(organ)


def test_a_division_id_is_used_once():
    organ = replace(TWO_STOPS, divisions=(a_division("Great"), a_division("Great")))

    assert list(loose_ends(organ)) == ["The division id “great” is used twice. Give each its own."]


def test_a_coupler_and_a_stop_do_not_share_an_id():
    coupler = Coupler("great/octave-4", "Octave", "great", "great", 4)

    (sentence,) = loose_ends(replace(TWO_STOPS, couplers=(coupler,)))

    assert sentence == "The control id “great/octave-4” is used twice. Give each its own."


def test_a_division_at_a_keyboard_that_is_not_there_is_found():
    organ = replace(TWO_STOPS, divisions=(a_division("Solo"),))

    assert list(loose_ends(organ)) == [
        "division solo: keyboard names “solo”, which this organ does not have."
    ]


def test_a_coupler_from_and_to_nowhere_is_found():
    organ = replace(TWO_STOPS, couplers=(Coupler("x", "X", "solo", "choir"),))

    assert list(loose_ends(organ)) == [
        "coupler x: from names “solo”, which this organ does not have.",
        "coupler x: to names “choir”, which this organ does not have.",
    ]


def test_a_stop_that_borrows_from_nothing_is_found():
    assert list(loose_ends(lending(("a", "b")))) == [
        "stop a: borrowed_from names “b”, which this organ does not have."
    ]


def test_stops_that_borrow_in_a_circle_are_found():
    sentences = list(loose_ends(lending(("a", "b"), ("b", "c"), ("c", "b"))))

    assert sentences == [f"stop {one}: borrowed_from leads round in a circle." for one in "abc"]
