"""Cells: a line parted where a table or a page of columns parts it."""

import re
from dataclasses import dataclass

from instruments.stoplist.layout.pieces import (
    LONGEST,
    has_figure,
    is_coupler,
    is_heading,
    is_loose,
    is_stop,
    is_tremulant,
)

_LEADERS = re.compile(r"\s?(?:[.·…_]\s?){3,}")
_PARTED = re.compile(r"\t|\s?\|\s?| {2,}")
_LED = "\x1f"
#: How far one cell of a table stands from the next, in the letters of a page of columns.
_STEP = 24


@dataclass(frozen=True, slots=True)
class Cell:
    """A text and the place in the line where it begins."""

    offset: int
    text: str


def cells_of(line: str) -> list[Cell]:
    """Part a line at tabs, bars and wide gaps; leaders of dots part nothing."""
    led = _LEADERS.sub(lambda match: _LED * len(match[0]), line)
    ruled = "\t" in led or "|" in led
    found: list[Cell] = []
    start = rules = 0
    for match in (*_PARTED.finditer(led), None):
        end = match.start() if match else len(led)
        text = re.sub(f"{_LED}+", " ", led[start:end]).strip()
        if text:
            found.append(Cell(rules * _STEP if ruled else start, text))
        if match:
            start = match.end()
            rules += match[0].strip(" ") in {"\t", "|"}
    return found


def groups_of(line: str) -> list[Cell]:
    """Part a line into cells of which each names something, its figures beside it."""
    cells = cells_of(line) if len(line) <= LONGEST else [Cell(0, line.strip())]
    leading = bool(cells) and is_loose(cells[0].text)
    groups: list[Cell] = []
    for at, cell in enumerate(cells):
        following = cells[at + 1].text if at + 1 < len(cells) else ""
        if groups and _belongs(groups[-1].text, cell.text, following, leading=leading):
            groups[-1] = Cell(groups[-1].offset, f"{groups[-1].text} {cell.text}")
        else:
            groups.append(cell)
    return groups


def _belongs(before: str, text: str, following: str, *, leading: bool) -> bool:
    if is_loose(before):
        return True
    if is_loose(text):
        names_next = leading and following and not is_loose(following)
        return not (names_next and has_figure(before) and has_figure(text))
    if is_heading(before) or is_heading(text) or is_tremulant(text) or is_coupler(text):
        return False
    return (has_figure(before) or text[0].isdigit()) and not is_stop(text)
