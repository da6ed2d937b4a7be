"""Assemble: the lines of a list, one after another, into an organ."""

import itertools
import re
from collections.abc import Iterator

from instruments.stoplist.book import Book
from instruments.stoplist.layout import layout
from instruments.stoplist.lines import read_piece, read_whole
from instruments.stoplist.organs import organ_of
from instruments.stoplist.pieces import pieces_of
from instruments.stoplist.reading import LineRead, Reading, StoplistError, Unread
from instruments.stoplist.sheets import from_sheet
from instruments.stoplist.stops import finish_stops
from instruments.stoplist.tables import language_of
from instruments.stoplist.tidy import tidy_line

LONGEST, MOST_LINES, MOST_STOPS, MOST_PIECES = 200_000, 1_000, 600, 1_200
_ALONE = re.compile(r"(?:I{1,3}|IV|V)[.:]?")
_NUMBER = re.compile(r"^\s*(\d{1,3})\b")


def read_stoplist(text: str, name: str = "") -> Reading:
    """Read a stop list; ``name`` is given to the organ in place of the first line's.

    Raises:
        StoplistError: there is no text, too much of it, it is not text, or no stop is in it.
    """
    _refuse(text)
    tidied = [tidy_line(line) for line in from_sheet(text.splitlines())]
    pieces = layout(list(enumerate(tidied, start=1)), MOST_PIECES)
    if len(pieces) > MOST_PIECES:
        raise StoplistError(f"It has more than {MOST_STOPS} stops. Paste one organ at a time.")
    lines = [(piece.line, piece.text) for piece in pieces]
    book = Book(language=language_of(text), numbered=_is_numbered([line for _, line in lines]))
    for piece in pieces:
        if piece.doubt:
            book.assume(piece.line, piece.doubt)
    originals = text.splitlines()
    for number, line in lines:
        _read_line(book, number, line, originals[number - 1].strip())
        _refuse_more(len(book.unfinished))
    finish_stops(book)
    if not book.unfinished:
        raise StoplistError(
            "No stop was found. Paste headings such as GREAT and a stop a line, like Principal 4."
        )
    organ = organ_of(book, name)
    return Reading(
        organ,
        tuple(sorted(dict.fromkeys(book.unread), key=lambda one: one.line)),
        tuple(sorted(book.assumed, key=lambda one: one.line)),
        tuple(_told(book.lines, originals)),
    )


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
    lines = sum(bool(line.strip()) for line in text.splitlines())
    if lines > MOST_LINES:
        raise StoplistError(
            f"The text has {lines:,} lines; {MOST_LINES:,} is the most that is read at once."
        )


def _refuse_more(stops: int) -> None:
    if stops > MOST_STOPS:
        raise StoplistError(f"It has more than {MOST_STOPS} stops. Paste one organ at a time.")


def _is_numbered(lines: list[str]) -> bool:
    """Say whether numbers that begin lines count the stops: most are one more than the last."""
    found = [int(match[1]) for line in lines if (match := _NUMBER.match(line))]
    steps = sum(after == before + 1 for before, after in itertools.pairwise(found))
    return len(found) > 3 and steps >= 0.6 * (len(found) - 1)


def _read_line(book: Book, number: int, line: str, original: str) -> None:
    if _ALONE.fullmatch(original):
        line = f"Manual {original}"
    whole = read_whole(book, number, line)
    if whole:
        book.lines.append(LineRead(number, original, whole))
        return
    told = [
        read_piece(book, number, piece.text, piece.told)
        for piece in pieces_of(line, numbered=book.numbered)
    ]
    if not told or not all(told):
        book.unread.append(Unread(number, original))
    understood = "; ".join(one for one in told if one)
    book.lines.append(LineRead(number, original, understood or "not read"))


def _told(read: list[LineRead], originals: list[str]) -> Iterator[LineRead]:
    """Give each line once, with all that its pieces were read as."""
    by_line: dict[int, list[str]] = {}
    for one in read:
        by_line.setdefault(one.line, []).append(one.read_as)
    for number, original in enumerate(originals, start=1):
        if original.strip():
            near = "read with a line near it" if tidy_line(original).strip() else "marks of a page"
            told = dict.fromkeys(by_line.get(number, [near]))
            yield LineRead(number, original.strip(), "; ".join(told))
