"""Notes: lines that tell of an organ what no stop does: its name, place, pitch, builder, wind."""

import re

from instruments.stoplist.book import Book
from instruments.stoplist.tables import words, words_of

LONGEST_NOTE, LONGEST_TITLE = 600, 120
_PITCH = re.compile(
    r"\b[aA]['’′1]?\s?[=:]?\s?(?P<hertz>4\d\d|39\d)(?:[.,]\d)?\s?(?:hz|cps)\b", re.I
)
_PITCH_EQUALS = re.compile(r"\b[aA]['’′1]?\s?=\s?(?P<hertz>4\d\d|39\d)\b")
_DATE = re.compile(r"\b1[4-9]\d\d\b|\b20\d\d\b")
_FOOTNOTE = re.compile(r"^\s*(?:[*†‡§]|\(?\d\)\s+[a-z]|[¹²³])")


def read_note(book: Book, number: int, text: str) -> str:
    """Keep a line that tells the pitch, the wind, the builder or a date; say so, or nothing."""
    pitch = _PITCH.search(text) or _PITCH_EQUALS.search(text)
    if pitch:
        book.pitch = float(pitch["hertz"])
    spoken = words_of(text)
    begins = bool(spoken) and (bool(words("note") & set(spoken[:2])) or bool(_FOOTNOTE.match(text)))
    dated = bool(_DATE.search(text)) and bool(book.titles or book.parts)
    if not (pitch or begins or dated) or len(text) > LONGEST_NOTE or text.rstrip().endswith("?"):
        return ""
    book.notes.append(text.strip())
    return f"pitch {book.pitch:g} Hz" if pitch else "note"


def read_title(book: Book, number: int, text: str) -> str:
    """Keep a line above all stops as the name of the organ or its place; say so, or nothing."""
    if (
        book.parts
        or len(book.titles) >= 3
        or len(text) > LONGEST_TITLE
        or text.endswith("?")
        or not words_of(text)
    ):
        return ""
    book.titles.append(text.strip(" .,;"))
    return "name of the organ" if len(book.titles) == 1 else "place"
