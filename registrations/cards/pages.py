"""Pages: what is placed where, and strips, the smallest things a page can end between.

Everything is in mm from the top left; type sizes are in points.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from registrations.cards.fonts import POINT, Face

#: Sizes in points. Registration is never under TEXT; only the foot, which carries none, is smaller.
#: Fluent reading wants an x-height of 0.2 degrees (Legge and Bigelow, Journal of Vision 11(5):8,
#: 2011): 11 to 14 points at 60 to 75 cm.
TEXT, NAME, CUE, TITLE, NUMBER, FOOT = 14.0, 18.0, 20.0, 24.0, 28.0, 9.0
LEADING = 1.18


@dataclass(frozen=True, slots=True)
class Text:
    """A line of text; ``y`` is its baseline. ``face`` changes inside it where a letter needs it."""

    x: float
    y: float
    text: str
    face: Face
    size: float


@dataclass(frozen=True, slots=True)
class Bar:
    """A black rectangle: a rule, a bar beside text."""

    x: float
    y: float
    width: float
    height: float


Mark = Text | Bar


@dataclass(frozen=True, slots=True)
class Page:
    """One page: its size in mm and what stands on it; ``bookmark`` is set where a sheet begins."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    bookmark: str = ""


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip across a column; ``joined`` strips stay with the one above if that can be helped."""

    height: float
    marks: tuple[Mark, ...] = ()
    joined: bool = False


def line_height(size: float) -> float:
    """Give the height of a line of this type size in mm."""
    return size * LEADING * POINT


def baseline(size: float) -> float:
    """Give how far under the top of its line the baseline is, in mm: nothing leaves its line."""
    return (size * LEADING / 2 + size * 0.3) * POINT


def height(strips: Iterable[Strip]) -> float:
    """Give the height of strips under each other."""
    return sum(strip.height for strip in strips)


def moved(mark: Mark, right: float, down: float) -> Mark:
    """Give a mark elsewhere."""
    return replace(mark, x=mark.x + right, y=mark.y + down)


def stacked(strips: Iterable[Strip], x: float, y: float) -> Iterator[Mark]:
    """Give the marks of strips that stand under each other from (x, y)."""
    for strip in strips:
        for mark in strip.marks:
            yield moved(mark, x, y)
        y += strip.height


def fitting(strips: tuple[Strip, ...], room: float) -> int:
    """Give how many strips go into ``room``, never ending between joined ones."""
    count = _crowded(strips, room)
    while 0 < count < len(strips) and strips[count].joined:
        count -= 1
    return count


def fitting_somehow(strips: tuple[Strip, ...], room: float) -> int:
    """Give how many strips go into ``room``, at least one, joined or not."""
    return fitting(strips, room) or max(1, _crowded(strips, room))


def _crowded(strips: tuple[Strip, ...], room: float) -> int:
    used = 0.0
    for count, strip in enumerate(strips):
        used += strip.height
        if used > room + 1e-6:
            return count
    return len(strips)
