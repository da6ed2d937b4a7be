"""Columns: divisions printed side by side, read one after another."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations, takewhile

from instruments.stoplist.headings import read_heading
from instruments.stoplist.layout.cells import Cell, groups_of
from instruments.stoplist.layout.continuity import dealt, follows_well
from instruments.stoplist.layout.pieces import (
    Piece,
    headings_in,
    is_coupler,
    is_heading,
    is_section,
    is_stop,
    is_tremulant,
)
from instruments.stoplist.layout.runon import SHORTEST, split_line, split_stops
from instruments.stoplist.layout.vertical import Line
from instruments.stoplist.tables import ANY_ROLE, words_of

_NEAR = 6
#: What a coupler among stops, or a stop among couplers, weighs against a guess.
_STRAY = 10


@dataclass(frozen=True, slots=True)
class _Row:
    """A line with its number, parted into groups; ``gap`` where a blank line stands before it."""

    line: int
    text: str
    groups: tuple[Cell, ...]
    gap: bool


@dataclass(slots=True)
class _Block:
    """Columns while they are read; ``flat`` where the spaces between them are lost."""

    offsets: list[int]
    flat: bool = False
    columns: list[list[Piece]] = field(default_factory=list)
    open: list[int] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.columns = [[] for _ in self.offsets]
        self.open = list(range(len(self.offsets)))

    def add(self, line: int, groups: Sequence[Cell], gap: bool) -> None:
        for order, group in enumerate(groups):
            at = order if len(groups) == len(self.offsets) else self.nearest(group.offset)
            self.columns[at].append(Piece(line, group.text, gap=gap))

    def deal(self, line: int, stops: Sequence[str]) -> None:
        """Give the stops of a row to columns: those that go on best where there are fewer."""
        if len(stops) < len(self.open):
            choices = list(combinations(self.open, len(stops)))
            fitness = [self._fitness(chosen, stops) for chosen in choices]
            self.open = list(choices[fitness.index(max(fitness))])
        guessed = len(self.open) < len(self.columns)
        for at, text in zip(self.open, stops, strict=False):
            doubt = f"“{text}”: its column is lost; it is taken to go on as {self.named(at)}."
            self.columns[at].append(Piece(line, text, doubt if guessed else ""))

    def is_list_of_couplers(self, at: int) -> bool:
        return is_section(self.named(at))

    def _fitness(self, chosen: Sequence[int], stops: Sequence[str]) -> float:
        return sum(
            follows_well(self.columns[at][-1].text, text, pedal=self.is_pedal(at))
            - _STRAY * (self.is_list_of_couplers(at) is not _couples(text))
            for at, text in zip(chosen, stops, strict=True)
        )

    def named(self, at: int) -> str:
        return self.columns[at][0].text

    def is_pedal(self, at: int) -> bool:
        heading = read_heading(self.named(at))
        return heading is not None and heading.home.is_pedal

    def nearest(self, offset: int) -> int:
        return min(range(len(self.offsets)), key=lambda at: abs(self.offsets[at] - offset))

    def pieces(self) -> list[Piece]:
        return [piece for column in self.columns for piece in column]


def unrolled(lines: Sequence[Line]) -> Iterator[Piece]:
    """Give the pieces of all lines: columns one after another, everything else as it stands."""
    block: _Block | None = None
    gap = False
    for at, line in enumerate(lines):
        if not line.text.strip():
            gap = True
            continue
        row = _Row(line.number, line.text.strip(), tuple(groups_of(line.text)), gap)
        begun = _begun(row, block, lines[at + 1 :])
        if begun is not None or block is None or not _goes_on(block, row):
            yield from block.pieces() if block else ()
            block = begun
        if block is None:
            yield from _alone(row)
        elif begun is None or not begun.flat:
            _put(block, row)
        gap = False
    yield from block.pieces() if block else ()


def _alone(row: _Row) -> list[Piece]:
    if not any(map(_is_thing, row.groups)):
        return [Piece(row.line, row.text, gap=row.gap)]
    if _is_one(row.groups) and all(is_heading(group.text) for group in row.groups):
        return [Piece(row.line, " ".join(row.text.split()), gap=row.gap)]
    texts = [part for group in row.groups for part in split_line(group.text)]
    first = next((at for at, text in enumerate(texts) if is_heading(text)), 0)
    heads = sum(1 for _ in takewhile(is_heading, texts[first:]))
    if heads > 1 and sum(map(is_stop, texts[first + heads :])) > 2 * heads:
        before = [Piece(row.line, text) for text in texts[:first]]
        return before + _dealt(row.line, texts[first:], heads)
    return [Piece(row.line, text, gap=row.gap and not at) for at, text in enumerate(texts)]


def _is_thing(group: Cell) -> bool:
    return len(group.text) > SHORTEST or _listed(group.text) or is_heading(group.text)


def _dealt(line: int, texts: list[str], heads: int) -> list[Piece]:
    """Give the stops of a whole page of columns that was copied as one line to their columns."""
    flat = _flat(line, texts[:heads])
    rest = texts[heads:]
    listed = [text for text in rest if _listed(text)]
    pedals = [flat.is_pedal(at) for at in range(heads)]
    for at, text in zip(dealt(listed, pedals), listed, strict=True):
        doubt = f"“{text}”: its column is lost; it is taken to stand under {flat.named(at)}."
        flat.columns[at].append(Piece(line, text, doubt))
    return flat.pieces() + [Piece(line, text) for text in rest if not _listed(text)]


def _flat(line: int, headings: list[str]) -> _Block:
    flat = _Block([0] * len(headings), flat=True)
    for at, text in enumerate(headings):
        flat.columns[at].append(Piece(line, text))
    return flat


def _begun(row: _Row, block: _Block | None, following: Sequence[Line]) -> _Block | None:
    """Give the columns that a row begins, or None."""
    offsets = [group.offset for group in row.groups]
    if len(offsets) > 1:
        if all(is_heading(group.text) for group in row.groups):
            return None if _is_one(row.groups) else _Block(offsets)
        stops = [group for group in row.groups if is_stop(group.text)]
        plain = block is None and len(stops) > 1 and not is_heading(row.groups[0].text)
        return _Block(offsets) if plain else None
    headings = headings_in(row.text)
    if len(headings) < 2:
        return None
    below = next((line.text for line in following if line.text.strip()), "")
    return _flat(row.line, headings) if len(split_stops(below)) > 1 else None


def _is_one(groups: Sequence[Cell]) -> bool:
    """Tell whether headings side by side name one division: Hauptwerk    I. Manual    C-g3."""
    roles = [one.home.role for group in groups if (one := read_heading(group.text))]
    return len(roles) > 1 and sum(role != ANY_ROLE for role in roles) == 1


def _goes_on(block: _Block, row: _Row) -> bool:
    if block.flat:
        stops = split_stops(row.text)
        return len(stops) <= len(block.open) and all(
            _listed(stop) or _couples(stop) for stop in stops
        )
    if len(row.groups) > 1:
        return not (_is_one(row.groups) and all(is_heading(one.text) for one in row.groups))
    group = row.groups[0]
    if len(block.offsets) > 1 and abs(group.offset - block.offsets[0]) > _NEAR:
        return abs(group.offset - block.offsets[block.nearest(group.offset)]) <= 2 * _NEAR
    return _listed(group.text) and len(split_line(group.text)) == 1


def _listed(text: str) -> bool:
    return is_stop(text) or is_tremulant(text)


def _couples(text: str) -> bool:
    return is_coupler(text) or "to" in words_of(text)


def _put(block: _Block, row: _Row) -> None:
    if block.flat:
        block.deal(row.line, split_stops(row.text))
    else:
        block.add(row.line, row.groups, row.gap)
