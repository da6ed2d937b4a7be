"""Columns: how divisions stand abreast, each whole if that can be helped."""

from dataclasses import dataclass
from itertools import accumulate

from registrations.cards.pages import Strip, fitting, fitting_somehow, height, stacked

GUTTER = 5.0


@dataclass(frozen=True, slots=True)
class Part:
    """One division: its heading, the heading where it goes on, and its entries."""

    heading: tuple[Strip, ...]
    again: tuple[Strip, ...]
    entries: tuple[Strip, ...]

    @property
    def strips(self) -> tuple[Strip, ...]:
        """The whole of it."""
        return self.heading + self.entries

    @property
    def height(self) -> float:
        """Its height in mm."""
        return height(self.strips)


Column = tuple[Strip, ...]


def column_width(measure: float, count: int) -> float:
    """Give the width of one of ``count`` columns in mm."""
    return (measure - GUTTER * (count - 1)) / count


def balanced(parts: tuple[Part, ...], count: int) -> tuple[Column, ...]:
    """Set whole parts, in order, in ``count`` columns that are as short as they can be."""
    heights = [part.height for part in parts]
    limits = sorted({end - start for end in _sums(heights) for start in _sums(heights)})
    settings = (_whole(parts, count, limit) for limit in limits)
    return next(columns for columns, rest in settings if not rest)


def _sums(heights: list[float]) -> list[float]:
    return list(accumulate(heights, initial=0.0))


def _whole(
    parts: tuple[Part, ...], count: int, room: float
) -> tuple[tuple[Column, ...], tuple[Part, ...]]:
    columns: list[Column] = []
    while parts and len(columns) < count:
        taken = fitting(tuple(Strip(part.height) for part in parts), room)
        columns.append(tuple(strip for part in parts[:taken] for strip in part.strips))
        parts = parts[taken:]
    return tuple(columns), parts


def poured(
    parts: tuple[Part, ...], count: int, room: float, fresh: float, force: bool
) -> tuple[tuple[Column, ...], tuple[Part, ...]]:
    """Fill columns ``room`` high; give them and what is left over.

    A part is divided only if it is taller than ``fresh``, an empty column of the next page. With
    ``force`` something is set even where nothing fits.
    """
    columns: list[Column] = []
    while parts and len(columns) < count:
        column, parts = _filled(parts, room, fresh, force and not any(columns))
        columns.append(column)
    return tuple(columns), parts


def _filled(
    parts: tuple[Part, ...], room: float, fresh: float, force: bool
) -> tuple[Column, tuple[Part, ...]]:
    column: Column = ()
    while parts:
        first, left = parts[0], room - height(column) + 1e-6
        if first.height <= left:
            column, parts = column + first.strips, parts[1:]
            continue
        must = force and not column
        if not must and first.height <= fresh:
            break
        taken = (fitting_somehow if must else fitting)(first.strips, left)
        if must or taken > len(first.heading):
            column, parts = column + first.strips[:taken], (_rest(first, taken), *parts[1:])
        break
    return column, parts


def _rest(part: Part, taken: int) -> Part:
    headed = len(part.heading)
    if taken < headed:
        return Part(part.heading[taken:], part.again, part.entries)
    return Part(part.again, part.again, part.entries[taken - headed :])


def abreast(columns: tuple[Column, ...], width: float) -> Strip:
    """Give columns of ``width`` mm beside each other as one strip."""
    marks = tuple(
        mark
        for place, column in enumerate(columns)
        for mark in stacked(column, place * (width + GUTTER), 0)
    )
    return Strip(max(map(height, columns), default=0), marks)
