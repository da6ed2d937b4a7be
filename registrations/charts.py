"""Charts: the pitch ladder, a picture of which harmonics sound, as SVG without inline style.

Pitch goes up the page, an octave everywhere as high. Octaves of the unison are full lines and full
bars, all else is hollow; what is missing is a dotted place. Sizes are in pixels at 100 %.
"""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from html import escape

from instruments.pitch import UNISON, harmonic, interval_name, is_octave, length_typeset
from registrations.checks.words import listed

_OCTAVE, _LINE, _EDGE = 88.0, 17.0, 12.0
_BAR, _SLIM = 13.0, 6.0
_LEFT, _RIGHT = 52.0, 40.0
_LETTER, _GAP = 7.6, 16.0
_NARROWEST = 64.0
#: Words of a label that come to so many letters stand on two lines.
_LONG = 11
#: At least these are shown, so that a picture of one stop has something to be measured by.
_FLOOR, _CEILING = Fraction(8), Fraction(2)


@dataclass(frozen=True, slots=True)
class Column:
    """What sounds under one heading: a stop, a keyboard, the keys from a break upward.

    ``beneath``: it is what another column stands on, and drawn slimmer. ``gaps`` are the pitches
    that it lacks and that should be shown as missing, ``standing`` those that stand out.
    """

    label: str
    lengths: tuple[Fraction, ...]
    beneath: bool = False
    gaps: tuple[Fraction, ...] = ()
    standing: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class Rung:
    """One pitch: how far down it is, and where its label is."""

    length: Fraction
    y: float
    label_y: float

    @property
    def is_octave(self) -> bool:
        """Whether it is the unison or octaves from it."""
        return is_octave(self.length)


@dataclass(frozen=True, slots=True)
class Bar:
    """One pitch of one column, with how many ranks sound it: none where it is missing."""

    x: float
    y: float
    width: float
    height: float
    hollow: bool
    ranks: int
    stands_out: bool


@dataclass(frozen=True, slots=True)
class Heading:
    """The label of a column, in lines, around ``x``."""

    x: float
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Ladder:
    """A pitch ladder, placed and measured; ``words`` says the same in a sentence."""

    width: float
    height: float
    headings: tuple[Heading, ...]
    rungs: tuple[Rung, ...]
    bars: tuple[Bar, ...]
    words: str


def ladder(columns: tuple[Column, ...]) -> Ladder:
    """Give the ladder of some columns: a rung for each of their pitches and for every octave."""
    lengths = shown_lengths(_all_lengths(columns))
    heads = [tuple(_wrapped(column.label)) for column in columns]
    top = max(map(len, heads), default=0) * _LINE + _EDGE
    places = {
        length: float(round(top + _OCTAVE * octaves(lengths[0], length))) for length in lengths
    }
    labels = spread([places[length] + _EDGE for length in lengths])
    widths = [_width(head) for head in heads]
    starts = [_LEFT + sum(widths[:at]) + _GAP * at for at in range(len(widths))]
    return Ladder(
        width=_LEFT + sum(widths) + _GAP * max(len(widths) - 1, 0) + _RIGHT,
        height=labels[-1] + _EDGE,
        headings=tuple(
            Heading(start + width / 2, head)
            for start, width, head in zip(starts, widths, heads, strict=True)
        ),
        rungs=tuple(
            Rung(length, places[length] + _EDGE, label)
            for length, label in zip(lengths, labels, strict=True)
        ),
        bars=tuple(
            _bar(column, length, count, start, width, places[length] + _EDGE)
            for column, start, width in zip(columns, starts, widths, strict=True)
            for length, count in _counted(column).items()
        ),
        words=ladder_words(columns),
    )


def _all_lengths(columns: tuple[Column, ...]) -> set[Fraction]:
    return {length for column in columns for length in _counted(column)}


def _counted(column: Column) -> dict[Fraction, int]:
    """Give how many ranks sound each pitch of a column: none a gap."""
    return {**dict.fromkeys(column.gaps, 0), **Counter(column.lengths)}


def shown_lengths(wanted: set[Fraction]) -> list[Fraction]:
    """Give the lengths to show, shortest first: those wanted, and all octaves around them."""
    longest, shortest = max({*wanted, _FLOOR}), min({*wanted, _CEILING})
    unisons = (UNISON * Fraction(2) ** power for power in range(-8, 5))
    shown = {one for one in unisons if shortest / 2 < one < longest * 2}
    return sorted(wanted | shown)


def octaves(high: Fraction, low: Fraction) -> float:
    """Give how many octaves one length sounds above another."""
    return math.log2(low / high)


def _wrapped(label: str) -> Iterator[str]:
    """Give a label a word a line, short words together."""
    line = ""
    for word in label.split():
        if line and len(line) + len(word) >= _LONG:
            yield line
            line = word
        else:
            line = f"{line} {word}".strip()
    yield line


def _width(head: tuple[str, ...]) -> float:
    return max(_NARROWEST, round(max(map(len, head)) * _LETTER, 1))


def spread(places: list[float]) -> list[float]:
    """Give places for labels, each at least a line below the one above."""
    spread = places[:1]
    for place in places[1:]:
        spread.append(max(place, spread[-1] + _LINE))
    return spread


def _bar(column: Column, length: Fraction, ranks: int, start: float, width: float, y: float) -> Bar:
    height = _SLIM if column.beneath else _BAR if ranks else _LINE
    stands_out = length in column.standing
    return Bar(start, y - height / 2, width, height, not is_octave(length), ranks, stands_out)


def ladder_words(columns: tuple[Column, ...]) -> str:
    """Say what a ladder shows, from low to high: ``8′, at the note played: Flute. 4′, ...``."""
    said = []
    for length in sorted(_all_lengths(columns), reverse=True):
        names = [column.label for column in columns if length in column.lengths]
        lacking = [column.label for column in columns if _counted(column).get(length) == 0]
        who = [listed(names)] if names else []
        who += [f"missing in {listed(lacking)}"] if lacking else []
        standing = [column.label for column in columns if length in column.standing]
        who += [f"stands out in {listed(standing)}"] if standing else []
        said.append(f"{length_typeset(length)}, {interval_name(length)}: {'; '.join(who)}.")
    return " ".join(said) or "Nothing of a pitch sounds."


def ladder_svg(picture: Ladder) -> str:
    """Write a ladder as SVG; colours and type come from the classes of the page's style sheet."""
    end = picture.width - _RIGHT
    parts = [
        f'<svg class="ladder" role="img" viewBox="0 0 {picture.width:g} {picture.height:g}" '
        f'width="{picture.width:g}" height="{picture.height:g}">',
        f"<title>{escape(picture.words)}</title>",
        *(_rung_svg(rung, end) for rung in picture.rungs),
        *(_heading_svg(heading) for heading in picture.headings),
        *(_bar_svg(bar) for bar in picture.bars),
        "</svg>",
    ]
    return "".join(parts)


def _rung_svg(rung: Rung, end: float) -> str:
    kind = "octave" if rung.is_octave else "between"
    count = harmonic(rung.length)
    baseline = rung.label_y + 5
    parts = [
        f'<line class="{kind}" x1="{_LEFT - 4:g}" y1="{rung.y:g}" x2="{end + 4:g}" '
        f'y2="{rung.y:g}"/>',
        _text("feet", _LEFT - 12, baseline, length_typeset(rung.length), "end"),
    ]
    if count.denominator == 1:
        parts.append(_text("count", end + 12, baseline, str(count), "start"))
    return "".join(parts)


def _heading_svg(heading: Heading) -> str:
    return "".join(
        _text("head", heading.x, _LINE * (at + 1) - 3, line, "middle")
        for at, line in enumerate(heading.lines)
    )


def _bar_svg(bar: Bar) -> str:
    kind = "missing" if not bar.ranks else "hollow" if bar.hollow else "full"
    inset = 0 if kind == "full" else 1
    drawn = (
        f'<rect class="{kind}" x="{bar.x + inset:g}" y="{bar.y + inset:g}" '
        f'width="{bar.width - 2 * inset:g}" height="{bar.height - 2 * inset:g}" rx="2"/>'
    )
    if bar.stands_out:
        drawn += _arrows(bar)
    if bar.ranks == 1:
        return drawn
    middle, below = bar.x + bar.width / 2, bar.y + bar.height / 2 + 4.5
    word = f"{bar.ranks} ranks" if bar.ranks else "missing"
    return drawn + _text(f"word {kind}", middle, below, word, "middle")


def _arrows(bar: Bar) -> str:
    """Point at a bar from both sides."""
    y, left, right = bar.y + bar.height / 2, bar.x - 1, bar.x + bar.width + 1
    shape = "".join(f"M{x:g} {y:g}l{out:g}-5v10z" for x, out in ((left, -7), (right, 7)))
    return f'<path class="stands-out" d="{shape}"/>'


def _text(kind: str, x: float, y: float, text: str, anchor: str) -> str:
    return f'<text class="{kind}" x="{x:g}" y="{y:g}" text-anchor="{anchor}">{escape(text)}</text>'
