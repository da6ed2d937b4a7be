"""Layout: sheets onto pages, everything in mm.

A change begins on a new page if it does not fit in what is left of one; it is divided only where
it is alone on its page and taller than it, and then between divisions. Nothing is made smaller to
fit and nothing is left out; only headings that are *repeated*, and a foot, are cut where the title
or the cue is so long that they would crowd a page.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from registrations.cards.blocks import (
    Chunk,
    chunks,
    entry_widths,
    heading,
    heading_again,
)
from registrations.cards.columns import Part, abreast, balanced, column_width, poured
from registrations.cards.content import Sheet, SheetKind, sheet_code
from registrations.cards.fonts import Face, Fonts
from registrations.cards.pages import (
    FOOT,
    TEXT,
    Bar,
    Mark,
    Page,
    Strip,
    Text,
    baseline,
    fitting,
    fitting_somehow,
    height,
    line_height,
    stacked,
)
from registrations.cards.papers import Paper
from registrations.cards.typeset import Token, flow

_FOOT_RIGHT = 30.0
_FOOT_GAP = 2.5
#: Between one change and the rule above the next.
_BETWEEN = 2.8


def lay_out(sheets: tuple[Sheet, ...], paper: Paper, fonts: Fonts) -> tuple[Page, ...]:
    """Give the pages of all sheets; every sheet begins a page and counts its own pages."""
    return tuple(page for sheet in sheets for page in _pages(sheet, paper, fonts))


def _pages(sheet: Sheet, paper: Paper, fonts: Fonts) -> Iterator[Page]:
    foot = _no_taller(_foot_strips(sheet, paper, fonts), paper.height / 3)
    foot_height = max(height(foot), 2 * line_height(TEXT)) + _FOOT_GAP
    room = paper.height - 2 * paper.margin - foot_height
    filling = _Filling(
        room, heading_again(fonts, sheet, paper.measure), *_columns(sheet, paper, fonts)
    )
    filling.begin(heading(fonts, sheet, paper.measure))
    for chunk in chunks(fonts, sheet, paper.measure, filling.width):
        filling.add(chunk)
    for number, marks in enumerate(filling.pages, 1):
        placed = tuple(stacked((Strip(0, tuple(marks)),), paper.margin, paper.margin))
        foot_marks = _foot(foot, number, len(filling.pages), paper, fonts, foot_height)
        bookmark = sheet.title if number == 1 else ""
        yield Page(paper.width, paper.height, (*placed, *foot_marks), bookmark)


def _no_taller(strips: tuple[Strip, ...], room: float) -> tuple[Strip, ...]:
    return strips if height(strips) <= room else strips[: fitting_somehow(strips, room)]


def _columns(sheet: Sheet, paper: Paper, fonts: Fonts) -> tuple[int, float]:
    """Give the most columns in which at most one name in three goes on to a second line."""
    widths = entry_widths(fonts, sheet)
    for count in range(paper.columns, 1, -1):
        width = column_width(paper.measure, count)
        if sum(wide > width for wide in widths) * 3 <= len(widths):
            return count, width
    return 1, paper.measure


@dataclass(slots=True)
class _Filling:
    """The pages of one sheet while they fill; ``fresh``: nothing but a heading on the last."""

    room: float
    again: tuple[Strip, ...]
    count: int
    width: float
    pages: list[list[Mark]] = field(default_factory=lambda: [[]])
    used: float = 0.0
    fresh: bool = True

    @property
    def left(self) -> float:
        return self.room - self.used + 1e-6

    def set(self, strips: tuple[Strip, ...], again: tuple[Strip, ...] = ()) -> None:
        """Set strips one by one, turning the page where there is no room."""
        while strips:
            taken = fitting(strips, self.left)
            if not taken and not self.fresh:
                self.turn(again)
                continue
            taken = taken or fitting_somehow(strips, self.left)
            self.pages[-1].extend(stacked(strips[:taken], 0, self.used))
            self.used += height(strips[:taken])
            self.fresh = False
            strips = strips[taken:]

    def begin(self, strips: tuple[Strip, ...]) -> None:
        """Set the heading of the sheet; where it leaves little room the next page is better."""
        self.set(strips)
        self.fresh = self.left > self.room / 3

    def above(self, again: tuple[Strip, ...]) -> tuple[Strip, ...]:
        """Give what stands on top of a further page: beyond two thirds of it even that is cut."""
        third = self.room / 3
        return _no_taller(self.again, third) + _no_taller(again, third)

    def turn(self, again: tuple[Strip, ...]) -> None:
        """Begin a page with the heading repeated, and what is divided named."""
        above = self.above(again)
        self.pages.append(list(stacked(above, 0, 0)))
        self.used, self.fresh = height(above), True

    def add(self, chunk: Chunk) -> None:
        """Add a change or a line: whole here, whole on a new page, or divided."""
        whole = (*chunk.head, abreast(balanced(chunk.parts, self.count), self.width))
        if height(whole) + _BETWEEN > self.left and not self.fresh:
            self.turn(())
        if not self.fresh:
            self.set((Strip(_BETWEEN),))
        if height(whole) <= self.left:
            self.set(whole)
        else:
            self.divide(chunk)

    def divide(self, chunk: Chunk) -> None:
        """Set a chunk that is taller than its page."""
        self.set(chunk.head, chunk.again)
        parts = chunk.parts
        fresh = self.room - height(self.above(chunk.again))
        while parts:
            columns = balanced(parts, self.count)
            rest: tuple[Part, ...] = ()
            if abreast(columns, self.width).height > self.left:
                columns, rest = poured(parts, self.count, self.left, fresh, self.fresh)
            if any(columns):
                self.set((abreast(columns, self.width),))
            parts = rest
            if parts:
                self.turn(chunk.again)


def _foot_strips(sheet: Sheet, paper: Paper, fonts: Fonts) -> tuple[Strip, ...]:
    """Give what catches an old card: when, which service, where, who, and the sheet code."""
    nobody = "player not named" if sheet.kind is SheetKind.ITEM else ""
    texts = (sheet.day, sheet.service, sheet.church, sheet.instrument, sheet.player or nobody)
    said = (f"Sheet {sheet_code(sheet)}", *(text for text in texts if text))
    chips = [(Token(f"{text} ·", Face.REGULAR, FOOT),) for text in said[:-1]]
    chips.append((Token(said[-1], Face.REGULAR, FOOT),))
    gap = fonts.width(" ", Face.REGULAR, FOOT)
    return flow(fonts, tuple(chips), paper.measure - _FOOT_RIGHT, 0, gap)


def _foot(
    strips: tuple[Strip, ...], number: int, pages: int, paper: Paper, fonts: Fonts, tall: float
) -> Iterator[Mark]:
    top = paper.height - paper.margin - tall + _FOOT_GAP
    yield Bar(paper.margin, top - 1.0, paper.measure, 0.2)
    yield from stacked(strips, paper.margin, top)
    said = [f"Page {number} of {pages}"] + (["continues"] if number < pages else [])
    for place, text in enumerate(said):
        x = paper.width - paper.margin - fonts.width(text, Face.SEMIBOLD, TEXT)
        y = top + place * line_height(TEXT) + baseline(TEXT)
        yield Text(x, y, text, Face.SEMIBOLD, TEXT)
