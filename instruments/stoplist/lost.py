"""Lost: headings for a list that has none, guessed from its gaps and its pedal stops."""

import re

from instruments.stoplist.book import Book, Part
from instruments.stoplist.headings import Heading, read_heading
from instruments.stoplist.pieces import pieces_of, unnumbered
from instruments.stoplist.stopline import StopLine, read_stop
from instruments.stoplist.tables import ANY_ROLE, PEDAL_ROLE

_DEEP = re.compile(
    r"(?i)sub|bass|bas\b|contra|open wood|posaune|bazuin|bombard|bourdon|pedal|violon"
)
_FIGURES = ("I", "II", "III", "IV", "V", "VI")


def give_headings(book: Book, lines: list[tuple[int, str]]) -> None:
    """Name the divisions of a list without headings; one with any is left as it is."""
    if any(_headed(line) for _, line in lines):
        return
    groups = _groups(book, lines)
    if not groups:
        return
    feet = len(groups) - 1 if len(groups) > 1 and _is_pedal(groups[-1][1]) else -1
    manuals = len(groups) - (feet >= 0)
    for place, (number, _) in enumerate(groups):
        if place == feet:
            part = Part("Pedal", PEDAL_ROLE)
        elif manuals == 1:
            part = Part("Manual", ANY_ROLE)
        else:
            part = Part(f"Manual {_FIGURES[min(place, 5)]}", ANY_ROLE, min(place, 5) + 1)
        book.starts[number] = part
        book.assume(number, f"No heading is written; {part.name} is taken from here.")


def _headed(line: str) -> bool:
    return any(_heading(piece.text) for piece in pieces_of(line))


def _heading(text: str) -> Heading | None:
    return read_heading(re.split(r":|—", text, maxsplit=1)[0])


def _groups(book: Book, lines: list[tuple[int, str]]) -> list[tuple[int, list[StopLine]]]:
    """Give the runs of stops between empty lines, each by the number of its first line."""
    groups: list[tuple[int, list[StopLine]]] = []
    open_group = False
    for number, line in lines:
        if not line.strip():
            open_group = False
            continue
        found = [
            read_stop(unnumbered(piece.text, numbered=book.numbered), pedal=False)
            for piece in pieces_of(line, numbered=book.numbered)
        ]
        stops = [one for one in found if one is not None and one.figured]
        if stops and not open_group:
            groups.append((number, []))
            open_group = True
        if stops:
            groups[-1][1].extend(stops)
    return groups


def _is_pedal(stops: list[StopLine]) -> bool:
    deep = sum(bool(one.length and one.length >= 16) for one in stops)
    named = sum(bool(_DEEP.search(one.name)) for one in stops)
    return deep + named >= len(stops) * 0.6
