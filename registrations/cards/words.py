"""Words: days, times, keys and numbers as a card writes them, in English whatever the locale."""

import re
from datetime import date, time

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_ACCIDENTALS = {"b": "♭", "♭": "♭", "flat": "♭", "#": "♯", "♯": "♯", "sharp": "♯", "♮": "♮"}
_MODES = {
    "": "", "major": "major", "maj": "major", "minor": "minor", "min": "minor", "m": "minor",
    **{mode: mode for mode in ("dorian", "phrygian", "lydian", "mixolydian", "aeolian")},
}  # fmt: skip
_KEY = re.compile(
    r"(?P<note>[A-G])(?:[\s-]?(?P<accidental>flat|sharp|[b♭#♯♮])(?=$|m|[\s-]))?[\s-]*(?P<mode>[a-z]*)",
    re.IGNORECASE,
)
_ROMAN = ((50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I"))


def day_words(day: date, starts: time) -> str:
    """Write when a service is: ``Sunday 29 November 2026, 10:30``."""
    date_words = f"{_DAYS[day.weekday()]} {day.day} {_MONTHS[day.month - 1]} {day.year}"
    return f"{date_words}, {starts.hour}:{starts.minute:02}"


def key_words(key: str) -> str:
    """Write a key for eyes, ``Eb`` as ``E♭`` and ``f# minor`` as ``F♯ minor``; others as given."""
    match = _KEY.fullmatch(key.strip())
    if match is None or match["mode"].lower() not in _MODES:
        return key
    sign = _ACCIDENTALS.get((match["accidental"] or "").lower(), "")
    return f"{match['note'].upper()}{sign} {_MODES[match['mode'].lower()]}".strip()


def roman(number: int) -> str:
    """Write a number of ranks in Roman figures."""
    figures = ""
    for value, figure in _ROMAN:
        count, number = divmod(number, value)
        figures += figure * count
    return figures
