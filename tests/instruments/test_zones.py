from fractions import Fraction

import pytest
from hypothesis import given

from instruments.compass import parse_key
from instruments.mixtures import Zone, ordinals_label
from instruments.pitch import LengthError
from instruments.zones import ZoneError, nominal, parse_zones, zones_text
from tests.instruments.strategies import COMPOSITIONS


def counts(text: str, **given) -> list[str]:
    return [ordinals_label(zone.lengths) for zone in parse_zones(text, **given)]


@given(COMPOSITIONS)
def test_a_composition_is_read_as_it_was_written(composition):
    assert parse_zones(zones_text(composition)) == composition


@pytest.mark.parametrize(
    ("text", "ranks"),
    [
        ("C 19.22.26.29", "19.22.26.29"),
        ("19.22.26.29", "19.22.26.29"),
        ("C: 19, 22, 26, 29", "19.22.26.29"),
        ("C 12 15 17", "12.15.17"),
        ("C 1 1/3, 1, 2/3, 1/2", "19.22.26.29"),
        ("C 1⅓′ 1′ ⅔′ ½′", "19.22.26.29"),
        ("C 1 1/3' + 1' + 2/3' + 1/2'", "19.22.26.29"),
        ("C 4 2 1", "8.15.22"),
        ("C 8", "1"),
        ("C 15", "15"),
        ("C 22.22.26", "22.22.26"),
        ("C 5 1/3'.1.5", "5.1.5"),
    ],
)
def test_ranks_are_understood_in_counts_and_in_feet(text, ranks):
    assert counts(text) == [ranks]


def test_each_line_is_a_zone_and_empty_lines_are_none():
    zones = parse_zones("C 19.22\n\nf#1 15.19\n")

    assert [zone.start for zone in zones] == [0, parse_key("f#1")]


def test_zones_are_put_in_the_order_of_the_keys():
    assert counts("C 22\nc2 12\nc 15") == ["22", "15", "12"]


def test_nothing_written_is_no_composition():
    assert parse_zones(" \n") == ()


def test_a_lone_rank_is_written_in_feet():
    assert zones_text((Zone(12, (Fraction(8),)),)) == "c 8'"


def test_real_lengths_become_nominal_ones_at_their_key():
    text = "C 2, 1 1/3\nc 1, 2/3\nc1 1/2, 1/3"

    assert counts(text, speaking=True) == ["15.19", "15.19", "15.19"]


def test_real_lengths_between_the_cs_become_the_nearest_rank():
    assert nominal(Fraction(3, 4), parse_key("f")) == Fraction(2)


def test_a_pipe_that_no_rank_has_at_that_key_is_refused():
    with pytest.raises(LengthError, match="no rank has a pipe of 3 feet at C"):
        nominal(Fraction(3), 0)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("C nineteen", "Line 1: “nineteen” is no rank."),
        ("H 15.19", "Line 1: “H” is no rank."),
        ("C 19.22\n15.19", "Line 2: “15.19” names no key."),
        ("C 19.22\nC 15.19", "Line 2: two zones begin at C."),
        ("C", "Line 1: a zone has one rank at least"),
        ("C 11.15", "Line 1: No rank is counted 11"),
        ("C1 15.19", "Line 1: “C1” is not a key."),
        ("C 1/0, 2/3", "Line 1: “1/0” is not a length."),
        ("C " + "15." * 61, "Line 1: a zone has one rank at least and 60 at most"),
    ],
)
def test_what_is_no_composition_is_refused_with_its_line(text, sentence):
    with pytest.raises(ZoneError) as refused:
        parse_zones(text)

    assert str(refused.value).startswith(sentence)
