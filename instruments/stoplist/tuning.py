"""Tuning: lines that tell an organ's temperament, or how its couplers act."""

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
_COUPLING = re.compile(r"^\W*coupling\s*:\s*(?P<how>direct|octaves|chained)\W*$", re.IGNORECASE)


def read_tuning(book: Book, number: int, text: str) -> str:
    """Keep the temperament or the coupling that a line tells; say so, or nothing."""
    coupling = _COUPLING.match(text)
    if coupling:
        book.coupling = Coupling(coupling["how"].lower())
        return f"coupling {book.coupling}"
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
