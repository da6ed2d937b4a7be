"""Tuning: lines that tell an organ's pitch or temperament, or how its couplers act."""

import re

from instruments.organ import Coupling
from instruments.stoplist.book import Book
from instruments.stoplist.tables import plain
from instruments.temperament import TEMPERAMENTS

_TEMPERAMENT = re.compile(
    r"^\W*(?:(?:temperament|tuning|temperatur|stimmung|stimmungsart|stemming|temperamento|accord|"
    r"stämning|stemning)\s*[:=]\s*|temp[eé]rament\s+|temperatura\s+|tempered\s+)"
    r"(?P<name>(?!.*\d{3}\s?hz)[^;:]{3,80})$|^\W*[\w-]+ (?:temperament|stimmung|stemming)\W*$",
    re.IGNORECASE,
)
_EQUAL = re.compile(r"\b(?:equal|gleich\w*|égal|eguale|equabile|igual|evenredig\w*|liksvävande)\b")
_PITCH = re.compile(
    r"^\W*(?:(?:pitch|stimmtonhöhe|stimmung|stimmton|tonhöhe|kammerton|diapason|toonhoogte|corista)"
    r"\s*[:=]?\s*(?:l?a['’′13]{0,2}\s?[=:]?\s?)?|l?a['’′13]{0,2}\s?[=:]?\s?)(?P<hertz>[3-5]\d\d(?:[.,]\d{1,3})?)\s?(?:hz|cps)?"
    r"(?:\s*\(?(?:bei|at|à|a|bij|ved|vid)\s\d{1,2}\s?°\s?C?\)?)?\W*$",
    re.IGNORECASE,
)
_COUPLING = re.compile(r"^\W*coupling\s*:\s*(?P<how>direct|octaves|chained)\W*$", re.IGNORECASE)


def read_tuning(book: Book, number: int, text: str) -> str:
    """Keep the pitch, temperament or coupling that a line tells and no more; say so, or nothing."""
    parts = [part for part in re.split(r"[,;.]\s+", text) if part.strip()]
    if not parts or not all(_told(part) for part in parts):
        return ""
    return ", ".join(_kept(book, part) for part in parts)


def _told(text: str) -> bool:
    return any(pattern.match(text) for pattern in (_COUPLING, _PITCH, _TEMPERAMENT))


def _kept(book: Book, text: str) -> str:
    coupling = _COUPLING.match(text)
    if coupling:
        book.coupling = Coupling(coupling["how"].lower())
        return f"coupling {book.coupling}"
    pitch = _PITCH.match(text)
    if pitch:
        book.pitch = float(pitch["hertz"].replace(",", "."))
        return f"pitch {book.pitch:g} Hz"
    match = _TEMPERAMENT.match(text)
    book.temperament = _named(((match and match["name"]) or text).strip(" ."))
    return f"temperament {book.temperament}"


def _named(text: str) -> str:
    """Give the name by which the temperament is known here; another one as it is written."""
    if _EQUAL.search(text.lower()):
        return "equal"
    said = plain(text)
    return next((one.name for one in TEMPERAMENTS if plain(one.name) == said), text)
