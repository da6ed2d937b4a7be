from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.compass import CompassError
from instruments.mixtures import (
    Zone,
    breaks,
    composition_from_list,
    composition_to_list,
    customary,
    lengths_at,
    ordinals_label,
    parse_ordinals,
)
from instruments.pitch import LengthError, length_of_ordinal

COUNTED = (1, 5, 8, 10, 12, 15, 17, 19, 21, 22, 23, 24, 26, 28, 29, 31, 33, 36)
LENGTHS = st.lists(st.sampled_from(COUNTED).map(length_of_ordinal), min_size=2, max_size=8)
COMPOSITIONS = st.lists(
    st.builds(Zone, st.integers(0, 60), LENGTHS.map(tuple)), unique_by=lambda zone: zone.start
).map(lambda zones: tuple(sorted(zones, key=lambda zone: zone.start)))
QUINT, OCTAVES = (Fraction(4, 3), Fraction(1)), (Fraction(4), Fraction(2))


@given(LENGTHS.map(tuple))
def test_counts_are_read_as_they_were_written(lengths):
    assert parse_ordinals(ordinals_label(lengths)) == lengths


@given(COMPOSITIONS)
def test_a_composition_is_read_as_it_was_written(composition):
    assert composition_from_list(composition_to_list(composition)) == composition


def test_zones_out_of_order_are_put_in_order():
    zones = composition_to_list((Zone(24, OCTAVES), Zone(0, QUINT)))

    assert composition_from_list(zones) == (Zone(0, QUINT), Zone(24, OCTAVES))


def test_two_zones_from_one_key_are_refused():
    zones = composition_to_list((Zone(12, OCTAVES), Zone(12, QUINT)))

    with pytest.raises(CompassError, match="Two zones begin at c"):
        composition_from_list(zones)


def test_a_zone_with_no_such_length_is_refused():
    with pytest.raises(LengthError, match="“x” is not a length"):
        composition_from_list([{"from": "C", "lengths": ["x"]}])


def test_each_zone_lasts_until_the_next():
    composition = (Zone(12, QUINT), Zone(36, OCTAVES))

    sounding = [lengths_at(composition, key) for key in (11, 12, 35, 36, 60)]

    assert sounding == [(), QUINT, QUINT, OCTAVES, OCTAVES]


def test_a_composition_breaks_where_it_changes():
    assert breaks((Zone(0, QUINT), Zone(24, OCTAVES))) == (24,)


def test_a_zone_like_the_one_below_is_no_break():
    assert breaks((Zone(0, QUINT), Zone(24, QUINT), Zone(36, OCTAVES))) == (36,)
    assert breaks((Zone(0, QUINT),)) == ()
    assert breaks(()) == ()


@pytest.mark.parametrize(
    "text", ["Mixture IV", "Mixture 15", "2 2/3", "Quint 2.2/3", "0.5 inch", "15.11", "15.19.223"]
)
def test_what_is_not_counted_gives_no_lengths(text):
    assert parse_ordinals(text) == ()


@pytest.mark.parametrize(
    "text", ["Mixture III 15.19.22", "15,19,22", "Mixture (15. 19. 22)", "ranks 15.19.22."]
)
def test_counts_are_found_among_other_words(text):
    assert parse_ordinals(text) == (Fraction(2), Fraction(4, 3), Fraction(1))


def test_a_rank_without_a_count_of_its_own_is_written_in_feet():
    label = ordinals_label((Fraction(16), Fraction(8), Fraction(8, 11), Fraction(4, 7)))

    assert label == "16'.1.8/11'.4/7'"


@pytest.mark.parametrize(("ranks", "has"), [(1, 2), (2, 2), (3, 3), (4, 4), (6, 6), (9, 6)])
def test_a_customary_composition_has_the_ranks_asked_for_within_reason(ranks, has):
    (zone,) = customary(ranks, start=24)

    assert (zone.start, len(zone.lengths)) == (24, has)
