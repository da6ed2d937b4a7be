"""Words: days and times as a card writes them, in English whatever the locale."""

from datetime import date, time

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip


def day_words(day: date, starts: time) -> str:
    """Write when a service is: ``Sunday 29 November 2026, 10:30``."""
    date_words = f"{_DAYS[day.weekday()]} {day.day} {_MONTHS[day.month - 1]} {day.year}"
    return f"{date_words}, {starts.hour}:{starts.minute:02}"
