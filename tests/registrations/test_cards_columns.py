import pytest

from registrations.cards.columns import GUTTER, Part, abreast, balanced, column_width, poured
from registrations.cards.fonts import Face
from registrations.cards.pages import Strip, Text, fitting, fitting_somehow, height


def a_strip(name: str, tall: float = 1, joined: bool = False) -> Strip:
    return Strip(tall, (Text(0, tall, name, Face.REGULAR, 14),), joined)


def a_part(name: str, *entries: str) -> Part:
    heading, again = (a_strip(name),), (a_strip(f"{name}, continued"),)
    return Part(heading, again, tuple(map(a_strip, entries)))


def names(columns) -> list[list[str]]:
    return [[mark.text for strip in column for mark in strip.marks] for column in columns]


GREAT, SWELL, PEDAL = a_part("Great", *"abc"), a_part("Swell", *"de"), a_part("Pedal", "f")


def test_columns_share_the_width_less_what_is_between_them():
    assert 2 * column_width(100, 2) + GUTTER == pytest.approx(100)


def test_whole_divisions_are_set_in_columns_as_short_as_can_be():
    assert names(balanced((GREAT, SWELL, PEDAL), 2)) == [
        ["Great", "a", "b", "c"],
        ["Swell", "d", "e", "Pedal", "f"],
    ]


def test_more_columns_than_divisions_stay_few():
    assert names(balanced((PEDAL,), 3)) == [["Pedal", "f"]]


def test_one_column_takes_all_in_order():
    assert names(balanced((SWELL, PEDAL), 1)) == [["Swell", "d", "e", "Pedal", "f"]]


def test_nothing_drawn_is_no_column():
    assert abreast(balanced((), 2), 50) == Strip(0)


def test_columns_beside_each_other_are_as_high_as_the_highest():
    strip = abreast(balanced((GREAT, SWELL), 2), 50)

    assert strip.height == 4
    assert [mark.x for mark in strip.marks] == [0] * 4 + [50 + GUTTER] * 3


def test_a_division_that_fits_the_next_column_is_not_divided():
    columns, rest = poured((GREAT, SWELL), 2, room=5, fresh=9, force=False)

    assert names(columns) == [["Great", "a", "b", "c"], ["Swell", "d", "e"]]
    assert rest == ()


def test_a_division_that_fits_a_new_page_waits_for_it():
    columns, rest = poured((PEDAL, GREAT), 1, room=4, fresh=9, force=False)

    assert names(columns) == [["Pedal", "f"]]
    assert rest == (GREAT,)


def test_a_division_taller_than_a_page_is_divided_and_says_so():
    columns, (rest,) = poured((GREAT,), 1, room=3, fresh=3, force=False)

    assert names(columns) == [["Great", "a", "b"]]
    assert names([rest.strips]) == [["Great, continued", "c"]]


def test_a_heading_is_never_left_without_a_stop():
    columns, rest = poured((GREAT,), 1, room=1, fresh=3, force=False)

    assert (names(columns), rest) == ([[]], (GREAT,))


def test_something_is_set_where_it_must_be():
    columns, (rest,) = poured((GREAT,), 2, room=1, fresh=9, force=True)

    assert names(columns) == [["Great"], []]
    assert names([rest.strips]) == [["Great, continued", "a", "b", "c"]]


def test_a_heading_of_many_lines_goes_on_where_it_was_broken():
    tall = Part((a_strip("A very"), a_strip("long name", joined=True)), (), (a_strip("a"),))
    columns, (rest,) = poured((tall,), 1, room=1, fresh=1, force=True)

    assert names(columns) == [["A very"]]
    assert names([rest.strips]) == [["long name", "a"]]


def test_a_name_of_two_lines_is_not_divided():
    strips = (a_strip("a"), a_strip("Double Open"), a_strip("Diapason", joined=True))

    assert fitting(strips, 2) == 1
    assert fitting(strips, 3) == 3


def test_where_a_name_is_taller_than_the_room_it_is_divided_after_all():
    strips = (a_strip("Double Open"), a_strip("Diapason", joined=True))

    assert fitting(strips, 1) == 0
    assert fitting_somehow(strips, 1) == 1
    assert fitting_somehow(strips, 0.5) == 1


def test_heights_add_up():
    assert height((a_strip("a", 2), a_strip("b", 3))) == 5
