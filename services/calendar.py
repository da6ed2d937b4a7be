"""Calendar: weeks as the department counts them, from Monday to the Sunday that crowns them."""

from datetime import date, timedelta


def monday_of(day: date) -> date:
    """Give the Monday of the week a day lies in."""
    return day - timedelta(days=day.weekday())


def neighbours(monday: date) -> tuple[date, date]:
    """Give the Mondays of the weeks before and after."""
    return monday - timedelta(days=7), monday + timedelta(days=7)
