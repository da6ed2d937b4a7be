"""Entries: one stop of the stop guide as strips, with its pitches on a line."""

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby

from instruments.pitch import UNISON, is_octave, length_typeset
from registrations.cards.content import Entry
from registrations.cards.fonts import Face, Fonts
from registrations.cards.pages import NAME, TEXT, Bar, Mark, Strip, Text, baseline, line_height
from registrations.cards.typeset import Token, keep, lines, with_marks

#: Where the text of an entry begins: right of its figure.
_INDENT_OF, _FIGURE_GAP = "2⅔′", 2.2
#: The heads of facts stand beside them where the text has this much room, else above, in mm.
_HEAD, _ROOM = 27.0, 110.0
#: The line of pitches: an octave's width at most, a mark's size and the strip's height above text.
_OCTAVE, _WIDE, _TALL, _LINE = 21.0, 4.0, 4.0, 0.2
_INK = 0.45
_HIGHEST = Fraction(1)


def entry_strips(fonts: Fonts, entry: Entry, width: float) -> tuple[Strip, ...]:
    """Give an entry: figure and name, what it is, its pitches, what it goes with."""
    indent = _indent(fonts, entry)
    body = [
        *_paragraph(fonts, entry.use, Face.SEMIBOLD, width, indent),
        *_paragraph(fonts, entry.told, Face.REGULAR, width, indent),
    ]
    body += _pitches(fonts, entry.lengths, width, indent)
    for head, facts in groupby(entry.facts, key=lambda fact: fact[0]):
        texts = tuple(text for _, text in facts)
        body += _facts(fonts, head, texts, width, indent)
    return (*_name(fonts, entry, entry.name, width), *body, Strip(1.5, joined=True))


def entry_again(fonts: Fonts, entry: Entry, width: float) -> tuple[Strip, ...]:
    """Give what stands above an entry where it goes on."""
    return _name(fonts, entry, f"{entry.name}, continued", width)


def _indent(fonts: Fonts, entry: Entry) -> float:
    widest = max(fonts.width(one, Face.BOLD, NAME) for one in (_INDENT_OF, entry.figure))
    return widest + _FIGURE_GAP


def _name(fonts: Fonts, entry: Entry, name: str, width: float) -> tuple[Strip, ...]:
    indent = _indent(fonts, entry)
    rule = Strip(1.6, (Bar(0, 0, width, 0.3),))
    named = keep(lines(fonts, Token(name, Face.BOLD, NAME), width, indent)) or (Strip(0),)
    end = indent - _FIGURE_GAP - fonts.width(entry.figure, Face.BOLD, NAME)
    figure = Text(end, baseline(NAME), entry.figure, Face.BOLD, NAME)
    return (rule, *with_marks(named, *([figure] if entry.figure else [])))


def _paragraph(
    fonts: Fonts, text: str, face: Face, width: float, indent: float
) -> tuple[Strip, ...]:
    return keep(lines(fonts, Token(text, face, TEXT), width, indent))


def _facts(
    fonts: Fonts, head: str, texts: tuple[str, ...], width: float, indent: float
) -> Iterator[Strip]:
    beside = width - indent >= _ROOM
    if not beside:
        yield from _paragraph(fonts, head, Face.SEMIBOLD, width, indent)
    label = Text(indent, baseline(TEXT), head, Face.SEMIBOLD, TEXT)
    for place, text in enumerate(texts):
        strips = _paragraph(fonts, text, Face.REGULAR, width, indent + (_HEAD if beside else 0))
        yield from with_marks(strips, label) if beside and place == 0 else strips


def _pitches(
    fonts: Fonts, lengths: tuple[Fraction, ...], width: float, indent: float
) -> tuple[Strip, ...]:
    """Give a line on which low is left: a full mark for an octave, a hollow one between them."""
    if not lengths:
        return ()
    longest, shortest = max(*lengths, UNISON), min(*lengths, _HIGHEST)
    octaves = math.log2(longest / shortest)
    step = min(_OCTAVE, (width - indent - 2 * _WIDE) / octaves)
    places = {
        length: indent + _WIDE / 2 + step * math.log2(longest / length)
        for length in sorted({*lengths, UNISON}, reverse=True)
    }
    middle = 1.5 + _TALL / 2
    marks: list[Mark] = [Bar(indent, middle - _LINE / 2, step * octaves + _WIDE, _LINE)]
    for length in places.keys() & set(lengths):
        marks += _mark(places[length] - _WIDE / 2, middle - _TALL / 2, is_octave(length))
    marks += _ticks(longest, shortest, indent + _WIDE / 2, step, middle)
    marks += _labels(fonts, places, frozenset(lengths), 2.0 + _TALL)
    return (Strip(3.0 + _TALL + line_height(TEXT), tuple(marks), joined=True),)


def _mark(x: float, y: float, full: bool) -> Iterator[Mark]:
    if full:
        yield Bar(x, y, _WIDE, _TALL)
        return
    yield Bar(x, y, _WIDE, _INK)
    yield Bar(x, y + _TALL - _INK, _WIDE, _INK)
    yield Bar(x, y, _INK, _TALL)
    yield Bar(x + _WIDE - _INK, y, _INK, _TALL)


def _ticks(
    longest: Fraction, shortest: Fraction, x: float, step: float, middle: float
) -> Iterator[Mark]:
    """Give a tick at every octave of the unison on the line."""
    octave = UNISON * 4
    while octave >= shortest:
        if octave <= longest:
            at = x + step * math.log2(longest / octave)
            yield Bar(at - _LINE / 2, middle - _TALL / 2, _LINE, _TALL)
        octave /= 2


def _labels(
    fonts: Fonts, places: dict[Fraction, float], sounding: frozenset[Fraction], top: float
) -> Iterator[Mark]:
    """Give the lengths under the line, each pushed right of the one before if it must be."""
    free = 0.0
    for length, middle in places.items():
        face = Face.SEMIBOLD if length in sounding else Face.REGULAR
        text = length_typeset(length)
        wide = fonts.width(text, face, TEXT)
        x = max(middle - wide / 2, free)
        yield Text(x, top + baseline(TEXT), text, face, TEXT)
        free = x + wide + 1.2
