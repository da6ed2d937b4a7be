"""Figures that mean feet, in every dress, and those that do not."""

import pytest

from instruments.pitch import length_label
from instruments.stoplist.lengths import figures_in


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("8", "8"),
        ("8'", "8"),
        ("16 ft.", "16"),
        ("4 Fuß", "4"),
        ("2 pieds", "2"),
        ("8 voet", "8"),
        ("2 2/3", "2 2/3"),
        ("2⅔'", "2 2/3"),
        ("2-2/3", "2 2/3"),
        ("2.2/3", "2 2/3"),
        ("2'2/3", "2 2/3"),
        ("2.66", "2 2/3"),
        ("22/3", "2 2/3"),
        ("11/3", "1 1/3"),
        ("13/5'", "1 3/5"),
        ("102/3", "10 2/3"),
        ("16/19", "16/19"),
        ("½", "1/2"),
        ("2 feet 8 inches", "2 2/3"),
        ("13 palmos", "8"),
        ("Flautado de 26", "16"),
    ],
)
def test_a_length_is_read_in_every_dress(text, label):
    assert [length_label(one.length) for one in figures_in(text)] == [label]


@pytest.mark.parametrize("text", ["61", "7", "1/0", "1897", "15.19.22", "80 %", "9 palmos", "3.7"])
def test_other_figures_are_no_lengths(text):
    assert figures_in(text) == ()


@pytest.mark.parametrize(("text", "sure"), [("8", False), ("8'", True), ("2 2/3", True)])
def test_a_bare_number_may_count_something_else(text, sure):
    assert [one.sure for one in figures_in(text)] == [sure]
