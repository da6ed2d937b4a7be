"""Lost: headings for a list that has none, guessed from its gaps and from where it starts anew."""

import re

from instruments.figures import roman
from instruments.stoplist.book import Book, Part
from instruments.stoplist.headings import read_heading
from instruments.stoplist.pieces import cells_of, pieces_of, unnumbered
from instruments.stoplist.stopline import StopLine, read_stop
from instruments.stoplist.tables import ANY_ROLE, PEDAL_ROLE, home, words, words_of
from instruments.tone import Family

MOST_LINES, MOST_GROUPS = 400, 7
_DEEP = re.compile(r"(?i)sub|bass|contra|kontra|open wood|posaune|bazuin|bombard|pedal|violon")
#: What manuals without headings are called, where words such as Swell to Great name them.
_ENGLISH = ("Great", "Swell", "Choir", "Solo", "Echo")

_Group = tuple[int, list[StopLine]]


def give_headings(book: Book, lines: list[tuple[int, str]]) -> None:
    """Name the divisions of a list without headings; one with any is left as it is."""
    spoken = [(number, line) for number, line in lines if line.strip()][:MOST_LINES]
    if any(_headed(line) for _, line in spoken):
        return
    groups = _groups(book, lines)
    if any(is_half_heading(line) for _, line in spoken):
        groups = groups[:1]
    if not groups or len(groups) > MOST_GROUPS:
        groups = groups[:1]
    feet = len(groups) - 1 if len(groups) > 1 and _is_pedal(groups[-1][1]) else len(groups)
    told = " ".join(line for _, line in spoken).lower()
    named = book.language == "en" and " to " in told and "swell" in told and feet <= len(_ENGLISH)
    for place, (number, _) in enumerate(groups):
        part = Part("Pedal", PEDAL_ROLE) if place == feet else _manual(place, feet, named)
        book.starts[number] = part
        book.assume(number, f"No heading is written; {part.name} is taken from here.")


def is_half_heading(line: str) -> bool:
    """Say whether a line heads the stops of one half of a keyboard."""
    spoken = words_of(line)
    halves = (words("bass_heading"), words("treble_heading"))
    return bool(spoken) and any(half.issuperset(spoken) for half in halves)


def _manual(place: int, manuals: int, named: bool) -> Part:
    if named:
        one = home(_ENGLISH[place].lower(), "en")
        return Part(_ENGLISH[place], one.role if one else ANY_ROLE)
    if manuals == 1:
        return Part("Manual", ANY_ROLE)
    return Part(f"Manual {roman(place + 1)}", ANY_ROLE, place + 1)


def _headed(line: str) -> bool:
    label = re.split(r":|—", line, maxsplit=1)[0]
    texts = [label, *(cell.text for cell in cells_of(line))]
    return any(len(text) < 120 and read_heading(text) for text in texts)


def _groups(book: Book, lines: list[tuple[int, str]]) -> list[_Group]:
    """Give the runs of stops between empty lines, each by the number of its first line.

    A list without empty lines is parted where a flue of 8 feet or more follows the end of a chorus.
    """
    groups: list[_Group] = []
    open_group = False
    for number, line in lines[: 2 * MOST_LINES]:
        if not line.strip():
            open_group = False
            continue
        stops = _stops(book, line)
        if stops and not open_group:
            groups.append((number, []))
            open_group = True
        if stops:
            groups[-1][1].extend(stops)
    return groups if len(groups) != 1 else _restarts(book, lines)


def _stops(book: Book, line: str) -> list[StopLine]:
    pieces = pieces_of(line, numbered=book.numbered)
    found = [
        read_stop(unnumbered(piece.text, numbered=book.numbered), pedal=False) for piece in pieces
    ]
    return [one for one in found if one is not None and (one.figured or one.match)]


def _restarts(book: Book, lines: list[tuple[int, str]]) -> list[_Group]:
    groups: list[_Group] = []
    last: StopLine | None = None
    for number, line in lines[:MOST_LINES]:
        for stop in _stops(book, line):
            if last is None or _starts_anew(last, stop, groups[-1][1]):
                groups.append((number, []))
            groups[-1][1].append(stop)
            last = stop
    return groups


def _starts_anew(last: StopLine, stop: StopLine, group: list[StopLine]) -> bool:
    """Say whether a stop opens a division: low flue work behind reeds, a mixture or a 2-foot."""
    if len(group) < 2 or stop.length is None or stop.length < 8 or _is_reed(stop):
        return False
    return _is_reed(last) or last.length is None or last.length <= 2


def _is_reed(stop: StopLine) -> bool:
    return stop.match is not None and stop.match.entry.family is Family.REED


def _is_pedal(stops: list[StopLine]) -> bool:
    deep = sum(
        bool(one.length and one.length >= 16) or bool(_DEEP.search(one.name)) for one in stops
    )
    return deep >= len(stops) * 0.6
