from datetime import date, time

import pytest

from registrations.cards.words import day_words, key_words, roman


def test_a_day_is_written_out_with_its_weekday_and_time():
    assert day_words(date(2026, 11, 29), time(9, 5)) == "Sunday 29 November 2026, 9:05"


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("Eb major", "E♭ major"),
        ("E flat", "E♭"),
        ("e-flat minor", "E♭ minor"),
        ("f# minor", "F♯ minor"),
        ("C sharp minor", "C♯ minor"),
        ("Bb", "B♭"),
        ("bbm", "B♭ minor"),
        ("b minor", "B minor"),
        ("Em", "E minor"),
        ("F", "F"),
        ("D dorian", "D dorian"),
        ("A♭ maj", "A♭ major"),
    ],
)
def test_a_key_is_set_with_its_sign(given, shown):
    assert key_words(given) == shown


@pytest.mark.parametrize("given", ["", "Tone VIII", "D, then G", "Es-Dur", "bebop", "H"])
def test_what_is_no_key_is_left_as_it_is(given):
    assert key_words(given) == given


@pytest.mark.parametrize(
    ("number", "figures"),
    [(1, "I"), (4, "IV"), (5, "V"), (8, "VIII"), (9, "IX"), (14, "XIV"), (46, "XLVI")],
)
def test_ranks_are_counted_in_roman_figures(number, figures):
    assert roman(number) == figures
