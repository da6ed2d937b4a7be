"""Compassline: lines that tell the keys of all manuals, of the pedals, or of one division."""

import re

from instruments.compass import Compass, compass_name
from instruments.stoplist.book import Book
from instruments.stoplist.compasses import compass_in
from instruments.stoplist.headings import read_heading

_OF_ALL = re.compile(
    r"\W*(?:manuals|pedals|manuale|manualen|compass|\w*umfang|\w*omvang|\w*omf[aå]ng|étendue)\b",
    re.I,
)
_WHOSE = re.compile(r"p[eé]d|manu|klav|clav", re.I)
_MANUALS = re.compile(
    r"^\W*(?:manuals?|manuale|manualen|claviers?|keyboards?|compass|\w*umfang|\w*omvang|"
    r"\w*omf[aå]ng|pedals?|pedalboard|estensione|extensi[oó]n|étendue|pédalier)\b",
    re.IGNORECASE,
)


def read_compass(book: Book, number: int, text: str) -> str:
    """Keep the compass of all manuals or of the pedals; one of a single division heads it."""
    if not _MANUALS.match(text) or compass_in(text) is None:
        return ""
    if read_heading(text) and ("(" in text or not _OF_ALL.match(text)):
        return ""
    parts = re.split(r"[;/·]\s|[.,]\s(?=[^\W\d]{3})", text)
    told = [_kept(book, part, found[0]) for part in parts if (found := compass_in(part))]
    return f"compass of the {', '.join(told)}"


def _kept(book: Book, text: str, compass: Compass) -> str:
    if not _WHOSE.search(text) and book.current and not book.current.stops:
        book.current.compass = compass
        return f"{book.current.name} {compass_name(compass)}"
    feet = bool(re.search(r"p[eé]da", text, re.IGNORECASE))
    book.compasses[feet] = compass
    return f"{'pedals' if feet else 'manuals'} {compass_name(compass)}"
