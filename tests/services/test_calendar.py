from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from services.calendar import monday_of, neighbours

DAYS = st.dates(date(1583, 1, 10), date(9990, 1, 1))


@pytest.mark.parametrize("day", [date(2026, 11, 23), date(2026, 11, 25), date(2026, 11, 29)])
def test_a_week_runs_from_monday_to_its_sunday(day):
    assert monday_of(day) == date(2026, 11, 23)


@given(DAYS)
def test_a_week_begins_on_a_monday_not_more_than_six_days_ago(day):
    monday = monday_of(day)

    assert monday.weekday() == 0
    assert 0 <= (day - monday).days <= 6


@given(DAYS)
def test_the_week_after_the_week_before_is_this_one(day):
    before, after = neighbours(monday_of(day))

    assert neighbours(before)[1] == neighbours(after)[0] == monday_of(day)
