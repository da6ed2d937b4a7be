from dataclasses import replace
from fractions import Fraction

import pytest

from registrations.cards.content import Entry
from registrations.cards.draw import load_fonts
from registrations.cards.entries import entry_again, entry_strips
from registrations.cards.pages import Bar, Text, height

WIDE, NARROW = 186.0, 89.0
TWELFTH = Entry(
    "2⅔′",
    "Twelfth",
    "Fills out the chorus.",
    "Principal: the chorus tone of the organ. Play c1, and you hear g2.",
    (Fraction(8, 3),),
    (("Goes with", "Fifteenth 2′."), ("Goes with", "Swell: every stop."), ("Avoid", "Celeste 8′.")),
)


def marks(entry=TWELFTH, width=WIDE):
    return [one for strip in entry_strips(load_fonts(), entry, width) for one in strip.marks]


def texts(entry=TWELFTH, width=WIDE):
    return [one.text for one in marks(entry, width) if isinstance(one, Text)]


def hollow_marks(*lengths):
    """Give how many marks are drawn as four thin sides, not as one full square."""
    bars = [one for one in marks(replace(TWELFTH, lengths=lengths)) if isinstance(one, Bar)]
    return sum(one.width < 1 < one.height < 5 and one.width > 0.3 for one in bars) // 2


def test_an_entry_says_all_it_has():
    said = " ".join(texts())

    for part in ("2⅔′", "Twelfth", "Fills out the chorus.", "g2.", "Fifteenth 2′.", "Celeste 8′."):
        assert part in said


def test_facts_of_one_head_are_headed_once():
    assert texts().count("Goes with") == 1
    assert texts().count("Avoid") == 1


def test_the_head_of_a_fact_stands_beside_it_where_there_is_room():
    def place(text, width):
        return next(one for one in marks(width=width) if getattr(one, "text", "") == text).x

    assert place("Goes with", WIDE) < place("Fifteenth 2′.", WIDE)
    assert place("Goes with", NARROW) == place("Fifteenth 2′.", NARROW)


@pytest.mark.parametrize("width", [WIDE, NARROW])
@pytest.mark.parametrize("lengths", [("32",), ("1/8",), ("8", "4", "8/3", "2", "8/5")])
def test_nothing_leaves_its_width(width, lengths):
    entry = replace(TWELFTH, lengths=tuple(map(Fraction, lengths)), told="long " * 60)
    fonts = load_fonts()

    for one in marks(entry, width):
        wide = fonts.width(one.text, one.face, one.size) if isinstance(one, Text) else one.width
        assert 0 <= one.x <= one.x + wide <= width + 1e-6


def test_octaves_are_full_marks_and_all_else_is_hollow():
    assert hollow_marks(Fraction(4)) == 0
    assert hollow_marks(Fraction(8, 3), Fraction(2), Fraction(8, 5)) == 2


def test_every_length_that_sounds_is_written_and_the_unison_to_compare():
    said = texts(replace(TWELFTH, figure="II", lengths=(Fraction(8, 3), Fraction(8, 5))))

    assert {"8′", "2⅔′", "1⅗′"} <= set(said)


def test_a_stop_without_a_pitch_or_a_figure_has_no_line_of_pitches():
    bell = replace(TWELFTH, figure="", lengths=(), facts=())

    assert texts(bell)[0] == "Twelfth"
    assert "8′" not in texts(bell)


def test_an_entry_without_a_name_keeps_its_figure():
    assert texts(replace(TWELFTH, name=""))[0] == "2⅔′"


def test_where_an_entry_goes_on_its_name_is_repeated():
    strips = entry_again(load_fonts(), TWELFTH, WIDE)

    said = [one.text for strip in strips for one in strip.marks if isinstance(one, Text)]
    assert said == ["2⅔′", "Twelfth, continued"]


def test_an_entry_stays_together_under_its_rule():
    rule, *rest = entry_strips(load_fonts(), TWELFTH, WIDE)

    assert not rule.joined
    assert all(one.joined for one in rest)
    assert height((rule, *rest)) < 80
