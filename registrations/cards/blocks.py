"""Blocks: the heading of a sheet, and each of its changes or lines, as strips and parts."""

from collections.abc import Iterator
from dataclasses import dataclass

from registrations.cards.columns import Part
from registrations.cards.content import Block, Control, Group, Line, Sheet, SheetKind
from registrations.cards.entries import entry_again, entry_strips
from registrations.cards.fonts import Face, Fonts
from registrations.cards.pages import (
    CUE,
    NAME,
    NUMBER,
    TEXT,
    TITLE,
    Bar,
    Strip,
    Text,
    baseline,
    line_height,
    moved,
)
from registrations.cards.typeset import Chip, Token, barred, flow, keep, lines, with_marks

NO_REGISTRATION = "No registration has been written for this item."
FIRST = "Set before it begins."
NO_MOVES = "Nothing to draw or put in."
NOTHING_DRAWN = "Nothing is drawn."

_FIGURE_GAP = 2.2
#: How far the second line of a long name stands in, so that it is not read as a name of its own.
_HANGING = 4.0
#: Where the sign, the word and the division of a move begin, in mm.
_SIGN, _WORD, _DIVISION = 3.2, 8.2, 24.0
#: Beside the name of a division its moves want this much room; else they stand under it.
_MOVES_ROOM = 62.0
_CHIP_GAP = 2.2


@dataclass(frozen=True, slots=True)
class Chunk:
    """What stays on one page if it can: strips, then parts in columns.

    ``again`` is what stands above it where it goes on.
    """

    head: tuple[Strip, ...]
    parts: tuple[Part, ...] = ()
    again: tuple[Strip, ...] = ()


def heading(fonts: Fonts, sheet: Sheet, width: float) -> tuple[Strip, ...]:
    """Give the heading of the first page of a sheet."""
    label = f"{sheet.number} · {sheet.label}" if sheet.number else sheet.label
    order = sheet.kind is SheetKind.ORDER
    tokens = (
        Token(sheet.day if order else label, Face.REGULAR, TEXT),
        Token(sheet.title, Face.BOLD, TITLE),
        Token(sheet.church if order else sheet.credit, Face.REGULAR, TEXT),
    )
    strips = tuple(strip for one in tokens for strip in lines(fonts, one, width))
    note = lines(fonts, Token(sheet.note, Face.REGULAR, TEXT), width)
    return (*strips, *flow(fonts, tuple(_facts(sheet)), width, 0, gap=6), *note, Strip(2.5))


def _facts(sheet: Sheet) -> Iterator[Chip]:
    if sheet.key:
        yield (Token(sheet.key if " " in sheet.key else f"Key {sheet.key}", Face.SEMIBOLD, TEXT),)
    if sheet.verses > 1:
        yield (Token(f"{sheet.verses} verses", Face.SEMIBOLD, TEXT),)
    place = _joined(", ", sheet.player, sheet.instrument)
    if place:
        yield (Token(place, Face.REGULAR, TEXT),)


def _joined(between: str, *parts: str) -> str:
    return between.join(part for part in parts if part)


def heading_again(fonts: Fonts, sheet: Sheet, width: float) -> tuple[Strip, ...]:
    """Give the heading of every further page of a sheet."""
    title = Token(f"{sheet.title}, continued", Face.BOLD, TEXT)
    return (*lines(fonts, title, width), Strip(2.5))


def chunks(fonts: Fonts, sheet: Sheet, width: float, column: float) -> Iterator[Chunk]:
    """Give the body of a sheet: changes, lines or stops, or a word that there are none."""
    for one in sheet.lines:
        yield Chunk(_order_line(fonts, one, width))
    for block in sheet.blocks:
        parts = tuple(_part(fonts, group, column) for group in block.drawn)
        yield Chunk(_head(fonts, block, width), parts, _head_again(fonts, block, width))
    for entry in sheet.entries:
        yield Chunk(entry_strips(fonts, entry, width), (), entry_again(fonts, entry, width))
    if not (sheet.lines or sheet.blocks or sheet.entries):
        nothing = Token(NO_REGISTRATION, Face.REGULAR, NAME)
        yield Chunk((_rule(width), *lines(fonts, nothing, width)))


def entry_widths(fonts: Fonts, sheet: Sheet) -> tuple[float, ...]:
    """Give how wide each drawn stop of a sheet is on one line, in mm, its figure included."""
    return tuple(
        _indent(fonts, group) + fonts.width(control.name, Face.SEMIBOLD, NAME)
        for block in sheet.blocks
        for group in block.drawn
        for control in group.controls
    )


def _indent(fonts: Fonts, group: Group) -> float:
    """Give where the names of a division begin: alike while no figure is wider than 2⅔′."""
    figures = [one.figure for one in group.controls if one.figure]
    widths = [fonts.width(one, Face.SEMIBOLD, NAME) for one in ("2⅔′", *figures)]
    return max(widths) + _FIGURE_GAP if figures else 0.0


def _rule(width: float) -> Strip:
    return Strip(2.2, (Bar(0, 0, width, 0.55),))


def _head(fonts: Fonts, block: Block, width: float) -> tuple[Strip, ...]:
    body = (
        *_hands(fonts, block, width),
        *lines(fonts, Token(block.note, Face.REGULAR, TEXT), width),
        Strip(1.2, joined=True),
        *_moves(fonts, block, width),
        Strip(2.0),
    )
    if not block.drawn:
        body += lines(fonts, Token(NOTHING_DRAWN, Face.REGULAR, NAME), width)
    return (_rule(width), *_cue(fonts, block, Token(block.cue, Face.BOLD, CUE), width), *body)


def _head_again(fonts: Fonts, block: Block, width: float) -> tuple[Strip, ...]:
    cue = f"{block.cue}, continued" if block.cue else "continued"
    return (_rule(width), *_cue(fonts, block, Token(cue, Face.BOLD, TEXT), width), Strip(0.8))


def _cue(fonts: Fonts, block: Block, cue: Token, width: float) -> tuple[Strip, ...]:
    number = Text(0, baseline(NUMBER), str(block.number), Face.BOLD, NUMBER)
    indent = fonts.width(f"{block.number} ", Face.BOLD, NUMBER) + 1.5
    first, *rest = lines(fonts, cue, width, indent) or (Strip(0),)
    down = baseline(NUMBER) - baseline(cue.size)
    marks = tuple(moved(mark, 0, down) for mark in first.marks)
    return (Strip(max(first.height + down, line_height(CUE)), (number, *marks), True), *rest)


def _hands(fonts: Fonts, block: Block, width: float) -> tuple[Strip, ...]:
    chips = tuple(
        (Token(player, Face.REGULAR, TEXT), Token(keyboard, Face.SEMIBOLD, NAME))
        for player, keyboard in block.hands
    )
    return flow(fonts, chips, width, 0, gap=6)


def _moves(fonts: Fonts, block: Block, width: float) -> tuple[Strip, ...]:
    if block.number == 1:
        return lines(fonts, Token(FIRST, Face.REGULAR, TEXT), width)
    indent = _moves_indent(fonts, block, width)
    rows = [
        *_move_rows(fonts, "+", "Draw", block.add, width, indent),
        *_move_rows(fonts, "−", "Put in", block.put_in, width, indent),
    ]
    if not rows:
        return lines(fonts, Token(NO_MOVES, Face.REGULAR, TEXT), width)
    return barred(tuple(rows))


def _move_rows(
    fonts: Fonts, sign: str, word: str, groups: tuple[Group, ...], width: float, indent: float
) -> Iterator[Strip]:
    for place, group in enumerate(groups):
        label = (
            Text(_SIGN, baseline(NAME), sign, Face.BOLD, NAME),
            Text(_WORD, baseline(NAME), "" if place else word, Face.SEMIBOLD, TEXT),
            Text(_DIVISION, baseline(NAME), group.name, Face.REGULAR, TEXT),
        )
        marks = tuple(mark for mark in label if mark.text)
        chips = tuple(_named(group.controls))
        if indent:
            yield from with_marks(flow(fonts, chips, width, indent, _CHIP_GAP), *marks)
        else:
            yield Strip(line_height(NAME), marks)
            yield from keep(flow(fonts, chips, width, _WORD, _CHIP_GAP))


def _moves_indent(fonts: Fonts, block: Block, width: float) -> float:
    """Give where stops begin beside the longest name of a division, 0 where there is no room."""
    groups = (*block.add, *block.put_in)
    names = max((fonts.width(one.name, Face.REGULAR, TEXT) for one in groups), default=0.0)
    indent = _DIVISION + names + 3.0
    return indent if width - indent >= _MOVES_ROOM else 0.0


def _named(controls: tuple[Control, ...]) -> Iterator[Chip]:
    for control in controls:
        stop = "," if control is not controls[-1] else ""
        figure = (Token(control.figure, Face.REGULAR, NAME),) if control.figure else ()
        yield (*figure, Token(control.name + stop, Face.SEMIBOLD, NAME))


def _part(fonts: Fonts, group: Group, width: float) -> Part:
    indent = _indent(fonts, group)
    return Part(
        _part_heading(fonts, group.name, width),
        _part_heading(fonts, f"{group.name}, continued", width),
        tuple(strip for one in group.controls for strip in _entry(fonts, one, width, indent)),
    )


def _part_heading(fonts: Fonts, name: str, width: float) -> tuple[Strip, ...]:
    rule = Strip(1.5, (Bar(0, 0.2, width, 0.2),), joined=True)
    return (Strip(2.2), *lines(fonts, Token(name, Face.REGULAR, TEXT), width), rule)


def _entry(fonts: Fonts, control: Control, width: float, indent: float) -> tuple[Strip, ...]:
    token = Token(control.name, Face.SEMIBOLD, NAME)
    name = lines(fonts, token, width, indent, _HANGING)
    if not control.figure:
        return name
    end = indent - _FIGURE_GAP - fonts.width(control.figure, Face.SEMIBOLD, NAME)
    return with_marks(name, Text(end, baseline(NAME), control.figure, Face.SEMIBOLD, NAME))


def _order_line(fonts: Fonts, line: Line, width: float) -> tuple[Strip, ...]:
    indent = fonts.width("00 ", Face.BOLD, CUE)
    place = _joined(", ", line.player, line.instrument)
    number = Text(0, baseline(NAME), str(line.number), Face.BOLD, CUE)
    tokens = (
        Token(line.title, Face.SEMIBOLD, NAME),
        Token(_joined(" · ", line.label, line.credit), Face.REGULAR, TEXT),
        Token(place, Face.REGULAR, TEXT),
    )
    body = tuple(strip for one in tokens for strip in lines(fonts, one, width, indent))
    return (_rule(width), *with_marks(body or (Strip(8.0),), number))
