"""Columns: rows of a list whose divisions stand side by side."""

from itertools import combinations

from instruments.stoplist.book import Book, Part
from instruments.stoplist.headings import read_heading
from instruments.stoplist.lines import begin, read_piece
from instruments.stoplist.pieces import Piece

_REEDS_LAST = 4


def read_columns(book: Book, number: int, pieces: list[Piece]) -> list[str]:
    """Read a row of headings, or a row under one; nothing where the list has no columns."""
    headed = [read_heading(piece.text, book.language) for piece in pieces]
    if len(pieces) > 1 and all(headed):
        parts = [begin(book, number, one) for one in headed if one]
        book.columns = [(piece.column, part) for piece, part in zip(pieces, parts, strict=True)]
        book.section = "stops"
        return [f"division {part.name}" for part in parts]
    if not book.columns or len(pieces) > len(book.columns) or book.section == "couplers":
        return []
    if any(headed):
        return []
    return _row(book, number, pieces)


def _row(book: Book, number: int, pieces: list[Piece]) -> list[str]:
    told = []
    for piece, part in zip(pieces, _owners(book, number, pieces), strict=True):
        book.current = part
        told.append(read_piece(book, number, piece.text))
    return told


def _owners(book: Book, number: int, pieces: list[Piece]) -> list[Part]:
    """Give the division of each piece: by its column where the columns are kept, else in order."""
    parts = [part for _, part in book.columns]
    if len(pieces) == len(parts):
        return parts
    if any(piece.column for piece in pieces) or len({at for at, _ in book.columns}) == len(parts):
        near = [_nearest(book, piece.column) for piece in pieces]
        if len({id(part) for part in near}) == len(near) and any(at for at, _ in book.columns):
            return near
    chosen = _likeliest(parts, len(pieces))
    book.assume(
        number, f"Which column it belongs to is not written; {chosen[0].name} is taken first."
    )
    return chosen


def _nearest(book: Book, column: int) -> Part:
    return min(book.columns, key=lambda one: abs(one[0] - column))[1]


def _likeliest(parts: list[Part], count: int) -> list[Part]:
    """Give the columns that have most stops so far, in order; those that fell short have ended."""
    chosen = max(combinations(parts, count), key=lambda those: sum(len(one.stops) for one in those))
    return list(chosen)
