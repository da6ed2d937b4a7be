"""Layout: sheets onto pages, everything in mm.

A change begins on a new page if it does not fit in what is left of one; it is divided only where
it is alone on its page and taller than it, and then between divisions. Nothing is made smaller to
fit and nothing is left out.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from registrations.cards.blocks import (
    FIGURE_GAP,
    Chunk,
    chunks,
    figure_width,
    heading,
    heading_again,
)
from registrations.cards.columns import Part, abreast, balanced, column_width, poured
from registrations.cards.content import Sheet, SheetKind, sheet_code
from registrations.cards.fonts import Face, Fonts
from registrations.cards.pages import (
    FOOT,
    NAME,
    TEXT,
    Bar,
    Mark,
    Page,
    Strip,
    Text,
    baseline,
    fitting_somehow,
    height,
    line_height,
    stacked,
)
from registrations.cards.papers import Paper

_FOOT_RIGHT = 30.0
_FOOT_GAP = 2.5


def lay_out(sheets: tuple[Sheet, ...], paper: Paper, fonts: Fonts) -> tuple[Page, ...]:
    """Give the pages of all sheets; every sheet begins a page and counts its own pages."""
    return tuple(page for sheet in sheets for page in _pages(sheet, paper, fonts))


def _pages(sheet: Sheet, paper: Paper, fonts: Fonts) -> Iterator[Page]:
    foot = _foot_lines(sheet, paper, fonts)
    foot_height = max(len(foot) * line_height(FOOT), 2 * line_height(TEXT)) + _FOOT_GAP
    room = paper.height - 2 * paper.margin - foot_height
    count, width = _columns(sheet, paper, fonts)
    filling = _Filling(
        room, _no_taller(heading_again(fonts, sheet, paper.measure), room / 3), count, width
    )
    filling.set(heading(fonts, sheet, paper.measure))
    filling.fresh = True
    for chunk in chunks(fonts, sheet, paper.measure, width, figure_width(fonts, sheet)):
        filling.add(chunk)
    for number, marks in enumerate(filling.pages, 1):
        placed = tuple(stacked((Strip(0, tuple(marks)),), paper.margin, paper.margin))
        foot_marks = _foot(foot, number, len(filling.pages), paper, fonts, foot_height)
        bookmark = sheet.title if number == 1 else ""
        yield Page(paper.width, paper.height, (*placed, *foot_marks), bookmark)


def _no_taller(strips: tuple[Strip, ...], room: float) -> tuple[Strip, ...]:
    return strips if height(strips) <= room else strips[: fitting_somehow(strips, room)]


def _columns(sheet: Sheet, paper: Paper, fonts: Fonts) -> tuple[int, float]:
    """Give the most columns in which at most one name in five goes on to a second line."""
    names = [
        control.name
        for block in sheet.blocks
        for group in block.drawn
        for control in group.controls
    ]
    widths = [fonts.width(name, Face.SEMIBOLD, NAME) for name in names]
    figures = figure_width(fonts, sheet) + FIGURE_GAP
    for count in range(paper.columns, 1, -1):
        width = column_width(paper.measure, count)
        if sum(figures + wide > width for wide in widths) * 5 <= len(widths):
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

    def set(self, strips: tuple[Strip, ...]) -> None:
        """Set strips one by one, turning the page where there is no room."""
        while strips:
            taken = fitting_somehow(strips, self.left)
            if strips[0].height > self.left and not self.fresh:
                self.turn(())
                continue
            self.pages[-1].extend(stacked(strips[:taken], 0, self.used))
            self.used += height(strips[:taken])
            self.fresh = False
            strips = strips[taken:]

    def turn(self, again: tuple[Strip, ...]) -> None:
        """Begin a page with the heading repeated, and what is divided named."""
        above = self.again + again
        self.pages.append(list(stacked(above, 0, 0)))
        self.used, self.fresh = height(above), True

    def add(self, chunk: Chunk) -> None:
        """Add a change or a line: whole here, whole on a new page, or divided."""
        whole = (*chunk.head, abreast(balanced(chunk.parts, self.count), self.width))
        if height(whole) > self.left and not self.fresh:
            self.turn(())
        if height(whole) <= self.left:
            self.set(whole)
        else:
            self.divide(chunk)

    def divide(self, chunk: Chunk) -> None:
        """Set a chunk that is taller than its page."""
        self.set(chunk.head)
        parts = chunk.parts
        fresh = self.room - height(self.again + chunk.again)
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


def _foot_lines(sheet: Sheet, paper: Paper, fonts: Fonts) -> tuple[str, ...]:
    """Give what catches an old card: when, which service, where, who, and the sheet code."""
    nobody = "" if sheet.kind is SheetKind.ORDER else "player not named"
    who = (sheet.church, sheet.instrument, sheet.player or nobody)
    texts = (
        f"{sheet.day} · {sheet.service}",
        " · ".join(part for part in who if part),
    )
    width = paper.measure - _FOOT_RIGHT
    wrapped = [line for text in texts for line in fonts.wrap(text, Face.REGULAR, FOOT, width)]
    return (*wrapped, f"Sheet {sheet_code(sheet)}")


def _foot(
    foot: tuple[str, ...], number: int, pages: int, paper: Paper, fonts: Fonts, tall: float
) -> Iterator[Mark]:
    top = paper.height - paper.margin - tall + _FOOT_GAP
    yield Bar(paper.margin, top - 1.0, paper.measure, 0.2)
    for place, text in enumerate(foot):
        y = top + place * line_height(FOOT) + baseline(FOOT)
        yield Text(paper.margin, y, text, Face.REGULAR, FOOT)
    said = [f"Page {number} of {pages}"] + (["continues"] if number < pages else [])
    for place, text in enumerate(said):
        x = paper.width - paper.margin - fonts.width(text, Face.SEMIBOLD, TEXT)
        y = top + place * line_height(TEXT) + baseline(TEXT)
        yield Text(x, y, text, Face.SEMIBOLD, TEXT)
