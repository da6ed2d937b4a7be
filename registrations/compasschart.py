"""Compass chart: which pitches sound along the keys of a keyboard, in words and as SVG.

Keys go across, pitch goes up as on the pitch ladder. Each pitch is a bar over the keys that sound
it: full for octaves of the note played, hollow for all else. Where other pitches begin stands a
dotted line with the name of the key; keys that sound nothing are framed. Sizes in pixels at 100 %.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from html import escape
from itertools import groupby

from instruments.compass import key_typeset
from instruments.organ import Keyboard, Organ
from instruments.pitch import is_octave, length_typeset
from registrations.charts import octaves, shown_lengths, spread
from registrations.checks.scene import Scene
from registrations.checks.words import lengths_words
from registrations.combination import Combination, Music
from registrations.sounding import Span, lengths_of

_KEY, _OCTAVE, _BAR = 7.0, 62.0, 10.0
_LEFT, _RIGHT, _TOP, _KEYS, _BOTTOM = 52.0, 16.0, 34.0, 16.0, 20.0
#: Keys between two key names that both find room.
_APART = 4
_SHARPS = frozenset({1, 3, 6, 8, 10})


@dataclass(frozen=True, slots=True)
class Stretch:
    """The keys from ``low`` to ``high`` and the lengths that each of them sounds, longest first."""

    low: int
    high: int
    lengths: tuple[Fraction, ...]

    @property
    def keys(self) -> str:
        """Name the keys: ``C to b``."""
        low, high = key_typeset(self.low), key_typeset(self.high)
        return low if low == high else f"{low} to {high}"

    @property
    def words(self) -> str:
        """Name the pitches: ``8′ and 4′``."""
        return lengths_words(self.lengths) if self.lengths else "nothing of a pitch sounds"


@dataclass(frozen=True, slots=True)
class CompassChart:
    """One keyboard and what sounds along it, from its lowest key to its highest."""

    keyboard: Keyboard
    stretches: tuple[Stretch, ...]

    @property
    def words(self) -> str:
        """Say what the picture shows: ``C to b: 8′ and 4′; c1 to c4: 8′.``"""
        return "; ".join(f"{one.keys}: {one.words}" for one in self.stretches) + "."

    def runs(self) -> Iterator[Stretch]:
        """Give each length with the unbroken keys it sounds at."""
        for length in {length for one in self.stretches for length in one.lengths}:
            for sounds, run in groupby(self.stretches, key=lambda one: length in one.lengths):
                first, *rest = run
                if sounds:
                    yield Stretch(first.low, (rest or [first])[-1].high, (length,))


def compass_charts(
    organ: Organ, combination: Combination, music: Music | None = None
) -> tuple[CompassChart, ...]:
    """Give the chart of each keyboard that is played, in console order."""
    scene = Scene(organ, combination, music or Music())
    return tuple(
        CompassChart(keyboard, tuple(_stretches(scene.spans_on(keyboard))))
        for keyboard in scene.played
    )


def _stretches(spans: tuple[Span, ...]) -> Iterator[Stretch]:
    """Give spans as stretches: those that differ only in the stops that sound are one."""
    for lengths, alike in groupby(spans, key=lambda span: lengths_of([span])):
        first, *rest = alike
        yield Stretch(first.low, (rest or [first])[-1].high, lengths)


def compass_svg(chart: CompassChart) -> str:
    """Write a chart as SVG; colours and type come from the classes of the page's style sheet."""
    paper = _paper(chart)
    return "".join(
        [
            f'<svg class="along" role="img" viewBox="0 0 {paper.width:g} {paper.height:g}" '
            f'width="{paper.width:g}" height="{paper.height:g}">',
            f"<title>{escape(chart.words)}</title>",
            *paper.rungs(),
            *paper.keys(),
            *(paper.bare(one) for one in chart.stretches if not one.lengths),
            *paper.begins([one.low for one in chart.stretches[1:]]),
            *(paper.bar(run) for run in sorted(chart.runs(), key=lambda run: run.lengths)),
            "</svg>",
        ]
    )


@dataclass(frozen=True, slots=True)
class _Paper:
    """Where keys and lengths are on the picture, and what is drawn there."""

    low: int
    high: int
    places: dict[Fraction, float]

    @property
    def width(self) -> float:
        return self.x(self.high + 1) + _RIGHT

    @property
    def floor(self) -> float:
        return max(self.places.values()) + _BAR

    @property
    def height(self) -> float:
        return self.floor + _KEYS + _BOTTOM

    def x(self, key: int) -> float:
        return _LEFT + _KEY * (key - self.low)

    def rungs(self) -> Iterator[str]:
        """Draw a line for each pitch, with its feet."""
        labels = spread(list(self.places.values()))
        for (length, y), label in zip(self.places.items(), labels, strict=True):
            kind = "octave" if is_octave(length) else "between"
            yield _line(kind, _LEFT - 4, y, self.x(self.high + 1), y)
            yield _text("feet", _LEFT - 12, label + 5, length_typeset(length), "end")

    def keys(self) -> Iterator[str]:
        """Draw the keys, the sharps filled, and name the C's."""
        width = self.x(self.high + 1) - _LEFT
        yield _rect("naturals", _LEFT, self.floor, width, _KEYS)
        for key in range(self.low, self.high + 1):
            if key % 12 in _SHARPS:
                yield _rect("sharp", self.x(key), self.floor, _KEY, _KEYS - 6)
            elif key % 12 == 0:
                yield _text("at", self.x(key), self.height - 5, key_typeset(key), "start")

    def bare(self, stretch: Stretch) -> str:
        """Frame the keys that sound nothing."""
        x, top = self.x(stretch.low), min(self.places.values()) - _BAR
        width = self.x(stretch.high + 1) - x
        frame = _rect("bare", x + 1, top, width - 2, self.floor - top - 3)
        return frame + _text("word", x + width / 2, (top + self.floor) / 2, "bare", "middle")

    def begins(self, keys: list[int]) -> Iterator[str]:
        """Mark the keys at which other pitches begin, and name those that find room."""
        named = self.low - _APART
        for key in keys:
            yield _line("begins", self.x(key), _TOP - 12, self.x(key), self.floor)
            if key - named >= _APART:
                yield _text("at", self.x(key), _TOP - 18, key_typeset(key), "middle")
                named = key

    def bar(self, run: Stretch) -> str:
        """Draw a pitch over its keys."""
        (length,) = run.lengths
        full = is_octave(length)
        inset = 0 if full else 1
        x, y = self.x(run.low) + 0.5, self.places[length] - _BAR / 2
        width = self.x(run.high + 1) - x - 0.5
        sides = (x + inset, y + inset, width - 2 * inset, _BAR - 2 * inset)
        return _rect("full" if full else "hollow", *sides)


def _paper(chart: CompassChart) -> _Paper:
    lengths = shown_lengths({length for one in chart.stretches for length in one.lengths})
    top = _TOP + _BAR
    return _Paper(
        chart.stretches[0].low,
        chart.stretches[-1].high,
        {one: round(top + _OCTAVE * octaves(lengths[0], one), 1) for one in lengths},
    )


def _rect(kind: str, x: float, y: float, width: float, height: float) -> str:
    return f'<rect class="{kind}" x="{x:g}" y="{y:g}" width="{width:g}" height="{height:g}"/>'


def _line(kind: str, x: float, y: float, to_x: float, to_y: float) -> str:
    return f'<line class="{kind}" x1="{x:g}" y1="{y:g}" x2="{to_x:g}" y2="{to_y:g}"/>'


def _text(kind: str, x: float, y: float, text: str, anchor: str) -> str:
    return f'<text class="{kind}" x="{x:g}" y="{y:g}" text-anchor="{anchor}">{escape(text)}</text>'
