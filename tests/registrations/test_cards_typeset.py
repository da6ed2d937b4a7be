import pytest

from registrations.cards.draw import load_fonts
from registrations.cards.fonts import Face
from registrations.cards.pages import Bar, Strip, Text
from registrations.cards.typeset import Token, barred, flow, keep, lines, with_marks


def a_token(text: str) -> Token:
    return Token(text, Face.REGULAR, 14)


def said(strips) -> list[list[str]]:
    return [[mark.text for mark in strip.marks] for strip in strips]


def test_no_text_is_no_line():
    assert lines(load_fonts(), a_token(""), 50) == ()


def test_a_paragraph_is_joined_from_its_second_line_on():
    strips = lines(load_fonts(), a_token("Lieblich Gedeckt, Voix céleste"), 40)

    assert said(strips) == [["Lieblich Gedeckt,"], ["Voix céleste"]]
    assert [strip.joined for strip in strips] == [False, True]


def test_further_lines_can_stand_in():
    strips = lines(load_fonts(), a_token("Lieblich Gedeckt, Voix céleste"), 44, x=4, hanging=3)

    assert [strip.marks[0].x for strip in strips] == [4, 7]


def test_chips_follow_each_other_on_a_line():
    chips = ((a_token("8′"), a_token("Oboe")), (a_token("4′"), a_token("Flute")))

    assert said(flow(load_fonts(), chips, 60, 0, 3)) == [["8′", "Oboe", "4′", "Flute"]]


def test_a_chip_that_does_not_fit_begins_the_next_line_whole():
    chips = ((a_token("8′"), a_token("Oboe")), (a_token("4′"), a_token("Flute")))
    strips = flow(load_fonts(), chips, 25, 5, 3)

    assert said(strips) == [["8′", "Oboe"], ["4′", "Flute"]]
    assert [strip.marks[0].x for strip in strips] == [5, 5]


def test_a_long_name_keeps_its_figure_with_its_first_words():
    chips = ((a_token("8′"), a_token("Lieblich Gedeckt")),)

    assert said(flow(load_fonts(), chips, 35, 0, 3)) == [["8′", "Lieblich"], ["Gedeckt"]]


def test_a_figure_wider_than_half_the_line_stands_alone():
    chips = ((a_token("XXXVIII 10⅔′"), a_token("Lieblich Gedeckt")),)

    assert said(flow(load_fonts(), chips, 38, 0, 3)) == [["XXXVIII 10⅔′"], ["Lieblich Gedeckt"]]


def test_a_bar_goes_down_beside_every_line():
    assert barred((Strip(5), Strip(6))) == (
        Strip(5, (Bar(0, 0, 1.1, 5),)),
        Strip(6, (Bar(0, 0, 1.1, 6),)),
    )


@pytest.mark.parametrize("joined", [True, False])
def test_marks_are_added_to_the_first_line_only(joined):
    sign = Text(0, 4, "+", Face.BOLD, 18)

    assert with_marks((Strip(5, (), joined), Strip(6)), sign) == (
        Strip(5, (sign,), joined),
        Strip(6),
    )


def test_what_is_kept_is_joined_to_what_is_above():
    assert keep((Strip(5), Strip(6))) == (Strip(5, joined=True), Strip(6, joined=True))
