"""Sheets: rows of a spreadsheet, which name the division beside each stop."""

import csv
from collections.abc import Sequence

from instruments.stoplist.headings import read_heading
from instruments.stoplist.tables import words, words_of

_LEAST_ROWS, _LONGEST_ROW = 3, 2_000
_SIGNS = (",", ";", "\t")


def from_sheet(lines: Sequence[str]) -> list[str]:
    """Give lines of comma-separated values as ``Great: Open Diapason  8``; other text as it is.

    Rows are taken for a sheet's where all have as many cells, and most name a division first.
    """
    if any(len(line) > _LONGEST_ROW for line in lines):
        return list(lines)
    for sign in _SIGNS:
        rows = [_cells(line, sign) if line.strip() else [] for line in lines]
        full = [row for row in rows if row]
        if len(full) >= _LEAST_ROWS and _is_sheet(full):
            return [_written(row) for row in rows]
    return list(lines)


def _cells(line: str, sign: str) -> list[str]:
    return [cell.strip() for cell in next(csv.reader([line], delimiter=sign), [])]


def _is_sheet(rows: list[list[str]]) -> bool:
    even = len(rows[0]) >= 3 and all(len(row) == len(rows[0]) for row in rows)
    headed = sum(read_heading(row[0]) is not None for row in rows) if even else 0
    return headed >= len(rows) - 1 and headed > 0


def _written(row: list[str]) -> str:
    if not row:
        return ""
    rest = "  ".join(cell for cell in row[1:] if cell)
    if read_heading(row[0]) is None or words("subheadings").issuperset(words_of(rest)):
        return f"{row[0]}  {rest}"
    return f"{row[0]}: {rest}"
