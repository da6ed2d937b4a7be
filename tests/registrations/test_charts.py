from fractions import Fraction
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from instruments.pitch import parse_length
from registrations.charts import Column, ladder, ladder_svg

SVG = "{http://www.w3.org/2000/svg}"


def a_column(label, *lengths, gaps=(), **given):
    return Column(label, _lengths(lengths), gaps=_lengths(gaps), **given)


def _lengths(texts):
    return tuple(map(parse_length, texts))


def rungs(*columns):
    return {rung.length: rung for rung in ladder(columns).rungs}


def bars(*columns):
    return ladder(columns).bars


def drawn(*columns):
    """Give the SVG's elements, read by a parser of our own choosing."""
    return list(ElementTree.fromstring(ladder_svg(ladder(columns))).iter())


def test_a_ladder_of_nothing_still_has_its_unison():
    picture = ladder(())

    assert [rung.length for rung in picture.rungs] == [2, 4, 8]
    assert picture.bars == ()
    assert picture.words == "Nothing of a pitch sounds."


def test_pitch_goes_up_the_page_an_octave_everywhere_as_high():
    found = rungs(a_column("Cornet", "8", "2 2/3", "1"))

    heights = [found[Fraction(feet)].y for feet in (1, 2, 4, 8)]
    assert [below - above for above, below in pairwise(heights)] == [88] * 3
    assert found[Fraction(2)].y < found[Fraction(8, 3)].y < found[Fraction(4)].y


def test_the_ladder_reaches_as_far_as_what_sounds():
    assert {16, 32} <= rungs(a_column("Bourdon", "32")).keys()
    assert Fraction(1, 2) in rungs(a_column("Cymbal", "1/2"))


def test_octaves_are_full_and_all_else_is_hollow():
    found = bars(a_column("Sesquialtera", "4", "2 2/3"))

    assert [one.hollow for one in found] == [False, True]


def test_what_lies_beneath_is_slimmer():
    slim, full = bars(a_column("Flute", "8", beneath=True), a_column("Octave", "4"))

    assert slim.height < full.height
    assert slim.x + slim.width < full.x


def test_a_bar_lies_on_its_rung():
    column = a_column("Nasard", "2 2/3")
    (bar,) = bars(column)

    assert bar.y + bar.height / 2 == rungs(column)[Fraction(8, 3)].y


def test_ranks_of_one_pitch_are_one_bar_with_their_number():
    (bar,) = bars(a_column("Mixture", "2", "2"))

    assert bar.ranks == 2
    assert "2 ranks" in [one.text for one in drawn(a_column("Mixture", "2", "2"))]


def test_labels_never_lie_on_each_other():
    found = rungs(a_column("Oddity", "1", "8/9", "8/10", "8/11", "8/13"))

    labels = sorted(rung.label_y for rung in found.values())
    assert all(below - above >= 17 for above, below in pairwise(labels))


def test_a_gap_is_a_place_that_says_it_is_missing():
    column = a_column("Twelfth", "8", "2 2/3", gaps=["4"])

    assert [one.ranks for one in bars(column) if not one.ranks] == [0]
    assert "missing" in [one.text for one in drawn(column)]
    assert "4′, an octave higher: missing in Twelfth." in ladder((column,)).words


def test_what_one_column_lacks_another_may_sound():
    picture = ladder((a_column("Great", "8", gaps=["4"]), a_column("Swell", "4")))

    assert "4′, an octave higher: Swell; missing in Great." in picture.words


def test_a_gap_that_sounds_is_none():
    (bar,) = bars(a_column("Octave", "4", gaps=["4"]))

    assert bar.ranks == 1


def test_without_a_gap_nothing_is_called_missing():
    assert "missing" not in [one.text for one in drawn(a_column("Twelfth", "2 2/3"))]


def test_the_words_say_what_the_picture_shows():
    picture = ladder((a_column("Flute", "8", "4"), a_column("Octave", "4")))

    assert picture.words == (
        "8′, at the note played: Flute. 4′, an octave higher: Flute and Octave."
    )


def test_harmonics_are_counted_where_they_can_be():
    texts = [one.text for one in drawn(a_column("Quint", "5 1/3"))]

    assert {"1", "2", "5⅓′"} <= set(texts)
    assert "3/2" not in texts


def test_a_long_label_is_set_in_lines_and_is_never_wider_than_its_column():
    column = a_column("Open Diapason Bass 8′", "8")
    (heading,), (bar,) = ladder((column,)).headings, bars(column)

    assert heading.lines == ("Open", "Diapason", "Bass 8′")
    assert heading.x == bar.x + bar.width / 2
    assert bars(a_column("Rohrschalmeioberton", "8"))[0].width > bar.width


def test_everything_lies_inside_the_picture():
    picture = ladder((a_column("Cornet", "8", "4", "1/4"), a_column("Quint", "10 2/3")))

    assert all(0 < rung.y < picture.height for rung in picture.rungs)
    assert all(0 < bar.x < bar.x + bar.width < picture.width for bar in picture.bars)


@pytest.mark.parametrize("text", ["<b>", "A & B", '"'])
def test_names_cannot_break_the_picture(text):
    assert text in "".join(one.text or "" for one in drawn(a_column(text, "8")))


def test_no_style_stands_in_the_picture():
    attributes = {name for one in drawn(a_column("Nasard", "2 2/3")) for name in one.attrib}

    assert attributes.isdisjoint({"style", "fill", "stroke", "onload"})


def test_a_bar_that_stands_out_is_pointed_at_and_told():
    column = a_column("Great", "8", "2 2/3", standing=_lengths(["2 2/3"]))
    points = [one for one in drawn(column) if one.get("class") == "stands-out"]

    assert len(points) == 1
    assert "Great; stands out in Great" in ladder((column,)).words


def test_nothing_is_pointed_at_where_nothing_stands_out():
    assert "stands-out" not in ladder_svg(ladder((a_column("Great", "8", "4"),)))
