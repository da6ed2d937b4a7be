"""Lostheads: divisions of a list that has lost its headings, guessed from gaps and order."""

import re
from collections.abc import Callable, Sequence

from instruments.stoplist.headings import read_heading
from instruments.stoplist.layout.continuity import is_reed, length_of
from instruments.stoplist.layout.pieces import (
    Piece,
    is_coupler,
    is_half,
    is_heading,
    is_stop,
    is_tremulant,
)
from instruments.stoplist.tables import home, words_of

_LEAST = 4
_BETWEEN = re.compile(r"\s+to\s+(?:the\s+)?|\s?[/–-]\s?", re.I)
_ROLES = ("great", "swell", "choir", "positive", "solo", "echo")
_DOUBT = "No heading is written; these stops are taken for the {}."


def headed(pieces: Sequence[Piece]) -> list[Piece]:
    """Give the pieces with headings before stops that have lost theirs."""
    if any(is_half(one.text) for one in pieces):
        return list(pieces)
    first = next((at for at, one in enumerate(pieces) if is_heading(one.text)), len(pieces))
    bare = pieces[:first]
    runs = _runs(bare)
    if sum(map(len, runs)) < (_LEAST if first == len(pieces) else 2):
        return list(pieces)
    names = _names(bare, runs, pieces)
    found: list[Piece] = []
    starts = {run[0]: name for run, name in zip(runs, names, strict=True)}
    for at, piece in enumerate(bare):
        if at in starts:
            found.append(Piece(piece.line, starts[at], _DOUBT.format(starts[at])))
        found.append(piece)
    return [*found, *pieces[first:]]


def _runs(pieces: Sequence[Piece]) -> list[list[int]]:
    """Give the places of the stops of each division."""
    stops = [at for at, one in enumerate(pieces) if is_stop(one.text)]
    runs = _parted(pieces, stops, _after_gap)
    if len(runs) > 1 and min(map(len, runs)) > 1:
        return runs
    return _parted(pieces, stops, _begins_again)


def _parted(
    pieces: Sequence[Piece], stops: list[int], parts: Callable[[Sequence[Piece], int, int], bool]
) -> list[list[int]]:
    runs: list[list[int]] = []
    for at in stops:
        if not runs or parts(pieces, runs[-1][-1], at):
            runs.append([])
        runs[-1].append(at)
    return runs


def _after_gap(pieces: Sequence[Piece], before: int, at: int) -> bool:
    return any(one.gap for one in pieces[before + 1 : at + 1])


def _begins_again(pieces: Sequence[Piece], before: int, at: int) -> bool:
    between = pieces[before + 1 : at]
    shaken = any(is_tremulant(one.text) for one in between)
    length = length_of(pieces[at].text)
    if is_reed(pieces[at].text) or length is None or length < 8:
        return False
    return shaken or is_reed(pieces[before].text)


def _names(bare: Sequence[Piece], runs: list[list[int]], pieces: Sequence[Piece]) -> list[str]:
    pedal = _pedal(bare, runs, pieces)
    coupled = _coupled(pieces)
    manuals = len(runs) - (pedal is not None)
    known = [one for one in coupled if one != "Pedal"]
    if len(known) != manuals:
        known = (
            ["Manual"] if manuals == 1 else [f"Manual {'I' * at}" for at in range(1, manuals + 1)]
        )
    names = iter(known)
    return ["Pedal" if at == pedal else next(names) for at in range(len(runs))]


def _coupled(pieces: Sequence[Piece]) -> list[str]:
    """Give the names of divisions that the list's couplers name, the main one first."""
    named: dict[str, str] = {}
    for piece in pieces:
        parts = _BETWEEN.split(piece.text)
        homes = [home(" ".join(words_of(part))) for part in parts] if len(parts) == 2 else []
        for one in homes:
            if one is not None and all(homes):
                named.setdefault(one.role, one.name)
    order = (*_ROLES, *named)
    return [named[role] for role in dict.fromkeys(order) if role in named]


def _pedal(bare: Sequence[Piece], runs: list[list[int]], pieces: Sequence[Piece]) -> int | None:
    if any(map(_heads_pedal, pieces)) or len(runs) < 2:
        return None
    depths = [_depth([bare[at].text for at in run]) for run in runs]
    deepest = max(range(len(runs)), key=lambda at: (depths[at], at))
    return deepest if depths[deepest] > 0 else None


def _heads_pedal(piece: Piece) -> bool:
    heading = read_heading(piece.text)
    return heading is not None and heading.home.is_pedal and not is_coupler(piece.text)


def _depth(texts: Sequence[str]) -> float:
    """Give how deep the stops of a division are: above 0 where it is like a pedal's."""
    lengths = [length for text in texts if (length := length_of(text)) is not None]
    if not any(length >= 16 for length in lengths) or not lengths:
        return 0
    low = sum(length >= 16 for length in lengths)
    return max(0.0, float(2 * low - sum(length < 4 for length in lengths)) / len(lengths) - 0.3)
