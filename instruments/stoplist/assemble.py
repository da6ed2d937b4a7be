"""Assemble: the lines of a list, one after another, into an organ."""

import re

from instruments.organ import Tremulant
from instruments.stoplist.book import Book
from instruments.stoplist.couplerline import read_couplers
from instruments.stoplist.headings import read_compass_line, read_heading
from instruments.stoplist.organs import organ_of
from instruments.stoplist.reading import LineRead, Reading, StoplistError, Unread
from instruments.stoplist.stops import read_stop_line
from instruments.stoplist.tables import ACCESSORY_WORDS, DIVISIONS

LONGEST, MOST_STOPS = 200_000, 2_000


def read_stoplist(text: str, name: str = "") -> Reading:
    """Read a stop list; ``name`` is given to the organ in place of the first line's.

    Raises:
        StoplistError: there is no text, too much of it, it is not text, or no stop is in it.
    """
    _refuse(text)
    book = Book()
    for number, line in enumerate(text.splitlines(), start=1):
        if line.strip():
            read_as = _read_line(book, number, line)
            if not read_as:
                book.unread.append(Unread(number, line.strip()))
            book.lines.append(LineRead(number, line.strip(), read_as or "not read"))
    stops = sum(len(part.stops) for part in book.parts)
    if stops == 0:
        raise StoplistError(
            "No stop was found. Paste headings such as GREAT and a stop a line, like Principal 4."
        )
    if stops > MOST_STOPS:
        raise StoplistError(
            f"There are {stops} stops in it; {MOST_STOPS} is the most that is read at once."
        )
    organ = organ_of(book, name)
    return Reading(organ, tuple(book.unread), tuple(book.assumed), tuple(book.lines))


def _refuse(text: str) -> None:
    if not text.strip():
        raise StoplistError("There is no text. Paste a stop list: headings, and a stop a line.")
    if len(text) > LONGEST:
        raise StoplistError(
            f"The text has {len(text):,} letters; {LONGEST:,} is the most that is read."
        )
    if "\x00" in text or sum(one.isprintable() or one.isspace() for one in text) < 0.9 * len(text):
        raise StoplistError(
            "This is not text but the inside of some other file. Copy the list as text."
        )


def _read_line(book: Book, number: int, line: str) -> str:
    for read in (
        read_compass_line,
        read_heading,
        _couplers,
        _tremulant,
        _accessory,
        read_stop_line,
        _title,
    ):
        read_as = read(book, number, line.strip())
        if read_as:
            return read_as
    return ""


def _couplers(book: Book, number: int, line: str) -> str:
    if line.lower().strip(" :") in {"couplers", "accessories"}:
        return "heading"
    found = read_couplers(line)
    book.couplers.extend((number, one) for one in found)
    return f"coupler {', '.join(one.name for one in found)}" if found else ""


def _tremulant(book: Book, number: int, line: str) -> str:
    match = re.fullmatch(r"\W*(?:(\w+)\s+)?tremul(?:ant|o)\W*(?:to\s+(\w+))?\W*", line, re.I)
    if match is None or book.current is None:
        return ""
    named = DIVISIONS.get((match[1] or match[2] or "").lower())
    part = next((one for one in book.parts if one.name == named), book.current)
    part.tremulants.append(Tremulant(book.slug(f"{part.name}/tremulant"), "Tremulant"))
    return f"tremulant of the {part.name}"


def _accessory(book: Book, number: int, line: str) -> str:
    if not any(word in line.lower() for word in ACCESSORY_WORDS) or len(line) > 200:
        return ""
    book.accessories.append(line.strip(" .;"))
    return "accessory"


def _title(book: Book, number: int, line: str) -> str:
    if book.parts or len(book.titles) >= 3 or len(line) > 120 or line.endswith("?"):
        return ""
    book.titles.append(line.strip(" .,;"))
    return "name of the organ" if len(book.titles) == 1 else "place"
