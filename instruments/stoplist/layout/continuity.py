"""Continuity: how well one stop of a list follows another, by the order that lists keep.

Common practice, no source: in a division the flues come first, from the longest to the shortest,
then mixtures, then reeds, again from the longest.
"""

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import combinations

from instruments.lexicon import Match, find_name
from instruments.stoplist.layout.pieces import figure_spans, is_tremulant
from instruments.stoplist.lengths import figures_in
from instruments.tone import Family

#: What a row more costs: columns are seldom of very different lengths.
_ROW = 0.75


@lru_cache(maxsize=4096)
def length_of(text: str) -> Fraction | None:
    """Give the first length in a piece, None where there is none."""
    found = figures_in(text)
    return found[0].length if found else None


@lru_cache(maxsize=4096)
def match_of(text: str, pedal: bool = False) -> Match | None:
    """Give what the lexicon says of the name in a piece."""
    spans = figure_spans(text)
    before = text[: spans[0][0]].strip(" .,") if spans else text
    return find_name(before or text[spans[0][1] :].strip(" .,"), "", pedal)


def is_reed(text: str) -> bool:
    """Tell whether a piece names a reed."""
    match = match_of(text)
    return match is not None and match.entry.family is Family.REED


def follows_well(before: str, text: str, *, pedal: bool) -> float:
    """Give how likely a stop stands below another in one division; more is likelier."""
    if is_tremulant(text):
        return -1 if pedal else 0.5
    here, above = length_of(text), length_of(before)
    fitness = _placed(text, here, pedal)
    if is_reed(before) != is_reed(text):
        return fitness + (1 if is_reed(text) else -2)
    if here is None or above is None:
        return fitness + (0 if here is None else -1)
    return fitness + (1 if here <= above else -1)


def _placed(text: str, length: Fraction | None, pedal: bool) -> float:
    match = match_of(text, pedal=True)
    if length is None:
        return -1 if pedal else 0
    if not pedal:
        return -0.5 if length >= 16 else 0.25
    if match and match.entry.pedal_lengths and length in match.entry.pedal_lengths:
        return 0.5
    return 0.5 if length >= 16 else -1 if length < 4 else -0.25


def dealt(texts: Sequence[str], pedals: Sequence[bool]) -> list[int]:
    """Give the column of each stop where rows of columns were copied one after another.

    A row has a stop of every column that has not ended; the ends are put where the stops go on
    best. ``pedals`` tells of each column whether it is a pedal.
    """
    every = tuple(range(len(pedals)))
    first = len(every)
    best: dict[tuple[int, tuple[int, ...]], tuple[float, list[int]]] = {}
    best[first, every] = (0.0, list(every))
    for at in range(first, len(texts) + 1):
        for (_, row), (fitness, path) in [(k, v) for k, v in best.items() if k[0] == at]:
            for size in range(1, len(row) + 1):
                for chosen in combinations(row, size):
                    if at + size <= len(texts):
                        gain = _gain(texts, at, row, chosen, pedals) - _ROW
                        key = (at + size, chosen)
                        if key not in best or best[key][0] < fitness + gain:
                            best[key] = (fitness + gain, [*path, *chosen])
    ends = [value for (at, _), value in best.items() if at == len(texts)]
    return max(ends, key=lambda one: one[0])[1] if ends else [0] * len(texts)


def _gain(
    texts: Sequence[str],
    at: int,
    row: tuple[int, ...],
    chosen: tuple[int, ...],
    pedals: Sequence[bool],
) -> float:
    above = dict(zip(row, texts[at - len(row) : at], strict=True))
    return sum(
        follows_well(above[one], text, pedal=pedals[one])
        for one, text in zip(chosen, texts[at : at + len(chosen)], strict=True)
    )
