"""Typeset: text into strips of lines."""

from collections.abc import Iterator
from dataclasses import dataclass

from registrations.cards.fonts import Face, Fonts
from registrations.cards.pages import Bar, Mark, Strip, Text, baseline, line_height


@dataclass(frozen=True, slots=True)
class Token:
    """Words in one face and size."""

    text: str
    face: Face
    size: float


Chip = tuple[Token, ...]


def lines(
    fonts: Fonts, token: Token, width: float, x: float = 0.0, hanging: float = 0.0
) -> tuple[Strip, ...]:
    """Give a paragraph as joined lines from ``x`` to ``width``, all but the first standing in."""
    room = width - x
    broken = fonts.wrap(token.text, token.face, token.size, room)
    if hanging and len(broken) > 1:
        rest = token.text.removeprefix(broken[0]).strip()
        broken = (broken[0], *fonts.wrap(rest, token.face, token.size, room - hanging))
    return tuple(
        Strip(
            line_height(token.size),
            (
                Text(
                    x + (hanging if place else 0),
                    baseline(token.size),
                    text,
                    token.face,
                    token.size,
                ),
            ),
            joined=place > 0,
        )
        for place, text in enumerate(broken)
    )


def flow(
    fonts: Fonts, chips: tuple[Chip, ...], width: float, x: float, gap: float
) -> tuple[Strip, ...]:
    """Set chips after each other, ``gap`` apart, each whole on one line if it is narrow enough."""
    rows: list[list[Text]] = []
    end = 0.0
    for chip in _pieces(fonts, chips, width - x):
        wide = _chip_width(fonts, chip)
        if not rows or end + gap + wide > width:
            rows.append([])
            end = x - gap
        rows[-1].extend(_placed(fonts, chip, end + gap))
        end += gap + wide
    return tuple(_row(row, place > 0) for place, row in enumerate(rows))


def _row(row: list[Text], joined: bool) -> Strip:
    size = max(text.size for text in row)
    marks = tuple(Text(one.x, baseline(size), one.text, one.face, one.size) for one in row)
    return Strip(line_height(size), marks, joined)


def _space(fonts: Fonts, token: Token) -> float:
    return fonts.width(" ", token.face, token.size)


def _chip_width(fonts: Fonts, chip: Chip) -> float:
    spaces = sum(_space(fonts, token) for token in chip[:-1])
    return spaces + sum(fonts.width(one.text, one.face, one.size) for one in chip)


def _placed(fonts: Fonts, chip: Chip, x: float) -> Iterator[Text]:
    for token in chip:
        yield Text(x, 0, token.text, token.face, token.size)
        x += fonts.width(token.text, token.face, token.size) + _space(fonts, token)


def _pieces(fonts: Fonts, chips: tuple[Chip, ...], width: float) -> Iterator[Chip]:
    for chip in chips:
        if _chip_width(fonts, chip) <= width:
            yield chip
        else:
            yield from _broken(fonts, chip, width)


def _broken(fonts: Fonts, chip: Chip, width: float) -> Iterator[Chip]:
    """Break the last words of a chip, a stop's name, and keep its figure with the first of them."""
    before, last = chip[:-1], chip[-1]
    used = _chip_width(fonts, chip) - fonts.width(last.text, last.face, last.size)
    if used > width / 2:
        yield from (piece for one in before for piece in _broken(fonts, (one,), width))
        before, used = (), 0.0
    for text in fonts.wrap(last.text, last.face, last.size, width - used):
        yield (*before, Token(text, last.face, last.size))
        before = ()


def barred(strips: tuple[Strip, ...]) -> tuple[Strip, ...]:
    """Give strips with a bar down their left edge."""
    return tuple(
        Strip(one.height, (Bar(0, 0, 1.1, one.height), *one.marks), one.joined) for one in strips
    )


def with_marks(strips: tuple[Strip, ...], *marks: Mark) -> tuple[Strip, ...]:
    """Give strips with more marks in the first of them."""
    first, *rest = strips
    return (Strip(first.height, (*marks, *first.marks), first.joined), *rest)


def keep(strips: tuple[Strip, ...]) -> tuple[Strip, ...]:
    """Give strips of which the first, too, stays with what is above."""
    return tuple(Strip(one.height, one.marks, joined=True) for one in strips)
