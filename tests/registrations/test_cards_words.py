from datetime import date, time

from registrations.cards.words import day_words


def test_a_day_is_written_out_with_its_weekday_and_time():
    assert day_words(date(2026, 11, 29), time(9, 5)) == "Sunday 29 November 2026, 9:05"
