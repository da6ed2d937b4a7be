"""Parts of addresses that are not numbers or words."""

from datetime import date

from django.urls import register_converter


class DayConverter:
    """A day written 2026-11-29."""

    regex = r"\d{4}-\d{2}-\d{2}"

    def to_python(self, value: str) -> date:
        """Read a day; ValueError (no such page) when the calendar has none."""
        return date.fromisoformat(value)

    def to_url(self, value: date) -> str:
        """Write a day."""
        return value.isoformat()


def register() -> None:
    """Make the converters known to Django's addresses."""
    register_converter(DayConverter, "day")
