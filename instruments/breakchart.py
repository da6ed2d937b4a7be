"""Break chart: what a compound stop sounds along the keys, as a picture and in words.

Keys go across, the pitch that is heard goes up; each rank is a line that falls back at a break.
Octaves of the note played are full lines, all else is hollow. Sizes are in pixels at 100 %.
"""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from html import escape

from instruments.compass import Compass, key_typeset
from instruments.mixtures import ordinals_label
from instruments.organ import Division, Organ, Stop
from instruments.pipework import composition_of, stop_compass
from instruments.pitch import UNISON, is_octave, length_typeset

_KEY, _SEMITONE = 10.0, 4.4
_LEFT, _RIGHT, _TOP, _BOTTOM = 34.0, 30.0, 22.0, 26.0


@dataclass(frozen=True, slots=True)
class Span:
    """The keys from ``low`` to ``high`` and the lengths that each of them sounds."""

    low: int
    high: int
    lengths: tuple[Fraction, ...]

    @property
    def keys(self) -> str:
        """Name the keys: ``c to b``."""
        if self.low == self.high:
            return key_typeset(self.low)
        return f"{key_typeset(self.low)} to {key_typeset(self.high)}"

    @property
    def counts(self) -> str:
        """Write the ranks in counts of the scale."""
        return ordinals_label(self.lengths).replace("'", "′")

    @property
    def feet(self) -> str:
        """Write the ranks in nominal feet."""
        return ", ".join(map(length_typeset, self.lengths))


@dataclass(frozen=True, slots=True)
class BreakChart:
    """One compound stop along its keys; ``assumed`` where its ranks are only the usual ones."""

    stop: Stop
    compass: Compass
    spans: tuple[Span, ...]
    assumed: bool

    @property
    def words(self) -> str:
        """Say what the picture shows."""
        return "; ".join(f"{span.keys}: {span.feet}" for span in self.spans) + "."


def break_chart(organ: Organ, division: Division, stop: Stop) -> BreakChart | None:
    """Give the chart of a stop, None for one that is not compound."""
    compass = stop_compass(organ, division, stop)
    spans = tuple(_spans(stop, compass))
    return BreakChart(stop, compass, spans, not stop.composition) if spans else None


def _spans(stop: Stop, compass: Compass) -> Iterator[Span]:
    zones = composition_of(stop)
    ends = [*(zone.start - 1 for zone in zones[1:]), compass.high]
    for zone, end in zip(zones, ends, strict=bool(zones)):
        low, high = max(zone.start, compass.low), min(end, compass.high)
        if low <= high:
            yield Span(low, high, tuple(sorted(zone.lengths, reverse=True)))


def chart_svg(chart: BreakChart) -> str:
    """Write a chart as SVG; colours and type come from the classes of the page's style sheet."""
    ceiling = max(_sounds(span.high, span.lengths[-1]) for span in chart.spans)
    floor = min(chart.compass.low, *(_sounds(one.low, one.lengths[0]) for one in chart.spans))
    paper = _Paper(chart.compass, floor, math.ceil(ceiling))
    return "".join(
        [
            f'<svg class="breaks" role="img" viewBox="0 0 {paper.width:g} {paper.height:g}" '
            f'width="{paper.width:g}" height="{paper.height:g}">',
            f"<title>{escape(chart.words)}</title>",
            *paper.grid(),
            *(paper.break_at(span.low) for span in chart.spans[1:]),
            *(line for span in chart.spans for line in paper.lines(span)),
            *(label for span in chart.spans for label in paper.labels(span)),
            "</svg>",
        ]
    )


def _sounds(key: int, length: Fraction) -> float:
    return key + 12 * math.log2(UNISON / length)


@dataclass(frozen=True, slots=True)
class _Paper:
    """The keys across and the pitches up, in semitones above bottom C, and what is drawn there."""

    compass: Compass
    floor: float
    ceiling: float

    @property
    def width(self) -> float:
        return _LEFT + _KEY * (self.compass.high - self.compass.low + 1) + _RIGHT

    @property
    def height(self) -> float:
        return round(_TOP + _SEMITONE * (self.ceiling - self.floor) + _BOTTOM, 1)

    def x(self, key: float) -> float:
        return _LEFT + _KEY * (key - self.compass.low)

    def y(self, pitch: float) -> float:
        return round(_TOP + _SEMITONE * (self.ceiling - pitch), 1)

    def grid(self) -> Iterator[str]:
        """Draw the C's across and up, and the note played itself."""
        low, high = self.compass.low, self.compass.high
        for pitch in range(12 * math.ceil(self.floor / 12), int(self.ceiling) + 1, 12):
            yield self._line("pitch-line", low, pitch, high + 1, pitch)
            yield _text("at", _LEFT - 6, self.y(pitch) + 4, _octave(pitch), "end")
        for key in range(12 * math.ceil(low / 12), high + 1, 12):
            yield self._line("key-line", key, self.floor, key, self.ceiling)
            yield _text("at", self.x(key) + 5, self.height - 8, key_typeset(key), "middle")
        yield self._line("played", low, low, high + 1, high + 1)

    def break_at(self, key: int) -> str:
        top = self.x(key)
        return self._line("break", key, self.floor, key, self.ceiling) + _text(
            "break-key", top, 14, f"breaks at {key_typeset(key)}", "middle"
        )

    def lines(self, span: Span) -> Iterator[str]:
        for length in dict.fromkeys(span.lengths):
            start, end = _sounds(span.low, length), _sounds(span.high + 1, length)
            kinds = ("rank",) if is_octave(length) else ("rank off", "rank core")
            for kind in kinds:
                yield self._line(kind, span.low, start, span.high + 1, end)

    def labels(self, span: Span) -> Iterator[str]:
        for length, ranks in Counter(span.lengths).items():
            written = length_typeset(length) if ranks == 1 else f"{ranks}×{length_typeset(length)}"
            place = self.y(_sounds(span.low, length)) + 4
            yield _text("feet", self.x(span.low) + 1, place, written, "start")

    def _line(self, kind: str, key: float, pitch: float, to_key: float, to_pitch: float) -> str:
        return (
            f'<line class="{kind}" x1="{self.x(key):g}" y1="{self.y(pitch):g}" '
            f'x2="{self.x(to_key):g}" y2="{self.y(to_pitch):g}"/>'
        )


def _octave(pitch: int) -> str:
    """Name a C by its octave, as far up as pipes go: C, c, c1 ... c8."""
    return "C" * (1 - pitch // 12) if pitch <= 0 else "c" + (str(pitch // 12 - 1) * (pitch > 12))


def _text(kind: str, x: float, y: float, text: str, anchor: str) -> str:
    return f'<text class="{kind}" x="{x:g}" y="{y:g}" text-anchor="{anchor}">{escape(text)}</text>'
