"""Tuning: lines that tell an organ's pitch or temperament, or how its couplers act."""

import re

from instruments.organ import Coupling
from instruments.stoplist.book import Book
from instruments.stoplist.tables import plain
from instruments.temperament import TEMPERAMENTS

_TEMPERAMENT = re.compile(
    r"^\W*(?:temperament|tuning|temperatur|stimmung|stimmungsart|stemming|temperamento|accord|"
    r"stämning|stemning)\s*[:=]\s*(?P<name>[^;:]{3,80})$",
    re.IGNORECASE,
)
_EQUAL = re.compile(r"\b(?:equal|gleich\w*|égal|eguale|equabile|igual|evenredig\w*|liksvävande)\b")
_PITCH = re.compile(
    r"^\W*(?:(?:pitch|stimmtonhöhe|stimmung|stimmton|tonhöhe|kammerton|diapason|toonhoogte|corista)"
    r"\s*[:=]?\s*)?a['’′1]{0,2}\s?[=:]?\s?(?P<hertz>[3-5]\d\d(?:[.,]\d{1,3})?)\s?(?:hz|cps)?\W*$",
    re.IGNORECASE,
)
_COUPLING = re.compile(r"^\W*coupling\s*:\s*(?P<how>direct|octaves|chained)\W*$", re.IGNORECASE)


def read_tuning(book: Book, number: int, text: str) -> str:
    """Keep the pitch, temperament or coupling that a line tells and no more; say so, or nothing."""
    coupling = _COUPLING.match(text)
    if coupling:
        book.coupling = Coupling(coupling["how"].lower())
        return f"coupling {book.coupling}"
    pitch = _PITCH.match(text)
    if pitch:
        book.pitch = float(pitch["hertz"].replace(",", "."))
        return f"pitch {book.pitch:g} Hz"
    match = _TEMPERAMENT.match(text)
    if match is None or re.search(r"\d{3}", match["name"]):
        return ""
    book.temperament = _named(match["name"].strip(" ."))
    return f"temperament {book.temperament}"


def _named(text: str) -> str:
    """Give the name by which the temperament is known here; another one as it is written."""
    if _EQUAL.search(text.lower()):
        return "equal"
    said = plain(text)
    return next((one.name for one in TEMPERAMENTS if plain(one.name) == said), text)
