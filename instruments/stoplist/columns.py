"""Columns: rows of a list whose divisions stand side by side."""

from itertools import combinations

from instruments.stoplist.book import Book, Part
from instruments.stoplist.headings import Heading, read_heading
from instruments.stoplist.lines import begin, read_piece
from instruments.stoplist.pieces import Piece, cells_of

MOST_COLUMNS = 7


def begin_columns(book: Book, number: int, line: str) -> str:
    """Read a row of headings side by side; say so, or nothing where it is not one."""
    cells = [cell for cell in cells_of(line) if cell.text.strip(" :")]
    headed = [(cell.column, read_heading(cell.text, book.language)) for cell in cells]
    book.tabbed = "\t" in line.strip()
    if book.tabbed:
        headed = [
            (at, read_heading(cell, book.language)) for at, cell in enumerate(line.split("\t"))
        ]
    if len(headed) == 1 and cells:
        headed = [(0, one) for one in _run_together(line, book.language)]
    headings = [(column, one) for column, one in headed if one is not None]
    if not 2 <= len(headings) <= MOST_COLUMNS or len(headings) < len(cells):
        return ""
    book.columns = [(column, begin(book, number, one)) for column, one in headings]
    book.section = "stops"
    book.current = book.columns[0][1]
    return "; ".join(f"division {part.name}" for _, part in book.columns)


def _run_together(line: str, language: str) -> list[Heading]:
    """Give the headings of a row whose gaps are lost: GREAT SWELL PEDAL."""
    words = line.split()
    if not 2 <= len(words) <= MOST_COLUMNS or read_heading(line, language) is None:
        return []
    headings = [read_heading(word, language) for word in words]
    found = [one for one in headings if one is not None and one.home.role != "manual"]
    return found if len(found) == len(words) == len({one.home.role for one in found}) else []


def read_row(book: Book, number: int, line: str, pieces: tuple[Piece, ...]) -> list[str]:
    """Read a row under headings side by side; nothing where it is not one."""
    if not book.columns or not pieces or book.section == "couplers":
        return []
    if book.tabbed and "\t" in line:
        cells = enumerate(line.split("\t"))
        pieces = tuple(Piece(cell.strip(), at) for at, cell in cells if cell.strip())
    if len(pieces) > len(book.columns):
        return []
    told = []
    for piece, part in zip(pieces, _owners(book, number, pieces), strict=True):
        book.current = part
        told.append(read_piece(book, number, piece.text, piece.told))
        if book.current is not part or book.section == "couplers":
            book.columns = []
            break
    return told


def _owners(book: Book, number: int, pieces: tuple[Piece, ...]) -> list[Part]:
    """Give the division of each piece: by its column where columns are kept, else in order."""
    parts = [part for _, part in book.columns]
    if len(pieces) == len(parts):
        return parts
    if len({column for column, _ in book.columns}) == len(parts):
        near = [_nearest(book, piece.column) for piece in pieces]
        if len({part.name for part in near}) == len(near):
            return near
    chosen = _likeliest(parts, len(pieces))
    if len(parts) > 1:
        names = ", ".join(part.name for part in chosen)
        book.assume(number, f"The columns are not kept; the row is taken for {names}.")
    return chosen


def _nearest(book: Book, column: int) -> Part:
    return min(book.columns, key=lambda one: abs(one[0] - column))[1]


def _likeliest(parts: list[Part], count: int) -> list[Part]:
    """Give the columns that have most stops so far, in order: those that fell short have ended."""
    chosen = max(combinations(parts, count), key=lambda those: sum(len(one.stops) for one in those))
    return list(chosen)
