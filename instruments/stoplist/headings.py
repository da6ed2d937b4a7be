"""Headings: lines that begin a division or tell a compass."""

import re

from instruments.compass import (
    Compass,
    CompassError,
    compass_name,
    compass_of_size,
    parse_compass,
)
from instruments.stoplist.book import Book, Part
from instruments.stoplist.tables import DIVISIONS, HEADING_WORDS

_COMPASS = re.compile(r"\b([A-G]{1,3}#?(?:,[A-G])?)\s*(?:-|–|to)\s*([a-gA-G]#?b?[1-6]?)\b")
_NOTES = re.compile(r"\b(\d{2})\s*(?:notes|keys)\b", re.I)


def read_heading(book: Book, number: int, line: str) -> str:
    """Begin a division where the line is a heading; say so, or nothing."""
    bare = re.sub(r"[()\[\]:.,;–—-]", " ", _NOTES.sub(" ", _COMPASS.sub(" ", line))).lower()
    words = bare.split()
    named = [word for word in words if word in DIVISIONS]
    if (
        not named
        or words[0] not in DIVISIONS | {"the": ""}
        or set(words) - set(DIVISIONS) - HEADING_WORDS
    ):
        return ""
    if (
        len(words) > 1
        and not set(words[1:]) & HEADING_WORDS
        and not _COMPASS.search(line)
        and not _NOTES.search(line)
    ):
        return ""
    part = Part(
        DIVISIONS[named[0]],
        "unenclosed" not in words
        and bool({"enclosed", "expressive", "box", "expression"} & set(words)),
        "floating" in words,
    )
    known = next((one for one in book.parts if one.name == part.name), None)
    if known is None:
        book.parts.append(part)
    book.current = known or part
    book.current.compass = _read_compass(line) or book.current.compass
    return f"division {part.name}"


def _read_compass(line: str) -> Compass | None:
    match = _COMPASS.search(line)
    if match:
        try:
            return parse_compass(f"{match[1]}-{match[2]}")
        except CompassError:
            pass
    notes = _NOTES.search(line)
    return compass_of_size(int(notes[1])) if notes and 12 <= int(notes[1]) <= 97 else None


def read_compass_line(book: Book, number: int, line: str) -> str:
    """Keep the compass that a line tells for all manuals or the pedals; say so, or nothing."""
    compass = _read_compass(line)
    feet = bool(re.search(r"\bpedals?\b", line, re.I))
    if compass is None or not re.match(
        r"\W*(?:manuals|pedals|compass|keyboards|pedalboard)\b(?!.*\borgan\b)", line, re.I
    ):
        return ""
    book.compasses[feet] = compass
    return f"compass of the {'pedals' if feet else 'manuals'} {compass_name(compass)}"
