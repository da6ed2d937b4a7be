"""Vertical: lists whose cells were copied one below another, names and figures on lines apart."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from instruments.stoplist.layout.pieces import (
    has_figure,
    is_heading,
    is_loose,
    is_section,
    is_tremulant,
)

_FIGURE = re.compile(r"[\dIVX½⅓⅔¼¾⅕⅖⅗⅘]")
_LEAST, _SHARE, _LONGEST = 3, 0.25, 24


@dataclass(frozen=True, slots=True)
class Line:
    """A line, and the other lines whose text was joined to its own."""

    number: int
    text: str
    joined: tuple[int, ...] = ()


def joined(lines: Sequence[Line]) -> list[Line]:
    """Give the lines with figures that stand alone put beside the names they belong to."""
    lines = _numbered(_closed(lines))
    named = [line for line in lines if line.text.strip()]
    figures = sum(map(_is_figure, named))
    if figures < _LEAST or figures < _SHARE * len(named):
        return list(lines)
    found: list[Line] = []
    names: list[int] = []
    waiting: list[Line] = []
    leading: bool | None = None
    for line in lines:
        if not line.text.strip():
            found.append(line)
        elif _is_figure(line):
            leading = not names if leading is None else leading
            waiting.append(line)
        elif _takes_figure(line):
            if leading:
                found.append(_with(line, waiting, before=True))
                waiting = []
            else:
                waiting = _handed(found, names, waiting)
                names.append(len(found))
                found.append(line)
        else:
            waiting = _handed(found, names, waiting)
            leading = None
            found.append(line)
    _handed(found, names, waiting)
    return found


def _closed(lines: Sequence[Line]) -> list[Line]:
    """Give the lines with a bracket that opens in one and closes in the next in one line."""
    found: list[Line] = []
    for line in lines:
        before = found[-1].text if found else ""
        if before.count("(") == before.count(")") + 1 and line.text.count(")") > line.text.count(
            "("
        ):
            found[-1] = _with(found[-1], [line])
        else:
            found.append(line)
    return found


def _numbered(lines: Sequence[Line]) -> Sequence[Line]:
    """Give the lines with numbers that stand alone and count the stops put before their names."""
    counts: list[int] = []
    wanted = None
    for at, line in enumerate(lines[:-1]):
        text = line.text.strip(" .)")
        if text.isdecimal() and wanted in {None, int(text)} and _takes_figure(lines[at + 1]):
            counts.append(at)
            wanted = int(text) + 1
    if len(counts) < _LEAST:
        return lines
    return [
        Line(line.number, f"{lines[at - 1].text.strip(' .)')}. {line.text.strip()}", (at,))
        if at - 1 in counts
        else line
        for at, line in enumerate(lines)
        if at not in counts
    ]


def _is_figure(line: Line) -> bool:
    text = line.text.strip()
    return len(text) <= _LONGEST and bool(_FIGURE.search(text)) and is_loose(text)


def _takes_figure(line: Line) -> bool:
    text = line.text.strip()
    return not (has_figure(text) or is_heading(text) or is_section(text) or is_tremulant(text))


def _handed(found: list[Line], names: list[int], waiting: list[Line]) -> list[Line]:
    """Hand the figures that wait to the names before them: one each, or all to the last."""
    if not waiting:
        return []
    if len(waiting) > len(names) or len(names) > len(waiting) == 1:
        if names:
            found[names[-1]] = _with(found[names[-1]], waiting)
        else:
            found.extend(waiting)
    else:
        for at, figure in zip(names[-len(waiting) :], waiting, strict=True):
            found[at] = _with(found[at], [figure])
    names.clear()
    return []


def _with(line: Line, figures: Sequence[Line], *, before: bool = False) -> Line:
    told = " ".join(one.text.strip() for one in figures)
    text = line.text.strip()
    numbers = tuple(one.number for one in figures)
    return Line(
        line.number, f"{told} {text}" if before else f"{text} {told}", line.joined + numbers
    )
