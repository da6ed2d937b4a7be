"""Ladder: what the pitch ladder of a combination shows, keyboard by keyboard.

One key stands for each keyboard: middle c, or the nearest to it that sounds. Two things are marked:
a pitch that is missing between those that sound, and one that stands out above its neighbours.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from instruments.compass import MIDDLE_C, key_typeset
from instruments.organ import Keyboard, Organ
from instruments.pitch import UNISON, interval_name, is_octave, length_typeset
from registrations.charts import Column
from registrations.checks.rules import gap_below_mutation
from registrations.checks.scene import Scene
from registrations.checks.words import stops_words
from registrations.combination import Combination, Music
from registrations.review import findings_of
from registrations.sounding import Part
from registrations.standout import stand_outs


@dataclass(frozen=True, slots=True)
class KeyboardLadder:
    """What sounds at one key of a keyboard, the lengths missing, and the dB of those standing out.

    ``standing`` leaves out the lowest pitch, which is the note itself.
    """

    keyboard: Keyboard
    key: int
    parts: tuple[Part, ...]
    gaps: tuple[Fraction, ...]
    standing: tuple[tuple[Fraction, float], ...]

    @property
    def heading(self) -> str:
        """Name the keyboard, and the key where it is not middle c."""
        name = self.keyboard.name
        return name if self.key == MIDDLE_C else f"{name} at {key_typeset(self.key)}"

    @property
    def column(self) -> Column:
        """Give it as a column of the picture."""
        return Column(
            self.heading,
            tuple(part.length for part in self.parts),
            gaps=self.gaps,
            standing=tuple(length for length, _ in self.standing),
        )

    def words_at(self, length: Fraction) -> str:
        """Say what is at a pitch: its stops and whether it stands out; ``missing``; or nothing."""
        if length in self.gaps:
            return "missing"
        stops = [part.stop for part in self.parts if part.length == length]
        named, above = stops_words(stops) if stops else "", dict(self.standing).get(length)
        return named if above is None else f"{named}, stands out by {above:.0f} dB"


@dataclass(frozen=True, slots=True)
class Row:
    """One pitch in words: its length, its interval from the note played, a cell a keyboard."""

    length: str
    interval: str
    cells: tuple[str, ...]


def ladder_of(
    organ: Organ, combination: Combination, music: Music | None = None
) -> tuple[KeyboardLadder, ...]:
    """Give the ladder of a combination: each keyboard that is played, in console order."""
    scene = Scene(organ, combination, music or Music())
    return tuple(_on(scene, keyboard) for keyboard in scene.played)


def rows(found: tuple[KeyboardLadder, ...]) -> tuple[Row, ...]:
    """Give a ladder as the rows of a table, lowest pitch first."""
    lengths = {length for one in found for length in (*_lengths(one.parts), *one.gaps)}
    return tuple(
        Row(
            length_typeset(length),
            interval_name(length),
            tuple(one.words_at(length) for one in found),
        )
        for length in sorted(lengths, reverse=True)
    )


def _on(scene: Scene, keyboard: Keyboard) -> KeyboardLadder:
    key = _key_for(scene, keyboard)
    spans = scene.spans_on(keyboard)
    parts = next(span.parts for span in spans if span.low <= key <= span.high)
    lengths = _lengths(parts)
    gaps = {*_octave_gaps(lengths), *_gaps_below_mutations(scene, keyboard, key)} - lengths
    return KeyboardLadder(
        keyboard,
        key,
        tuple(sorted(parts, key=lambda part: -part.length)),
        tuple(sorted(gaps, reverse=True)),
        tuple(_standing(scene, keyboard, key, lengths)),
    )


def _lengths(parts: tuple[Part, ...]) -> frozenset[Fraction]:
    return frozenset(part.length for part in parts)


def _key_for(scene: Scene, keyboard: Keyboard) -> int:
    """Give the key that stands for a keyboard: of those that sound, the nearest to middle c."""
    spans = scene.spans_on(keyboard)
    sounding = [span for span in spans if span.parts] or spans
    nearest = (min(max(MIDDLE_C, span.low), span.high) for span in sounding)
    return min(nearest, key=lambda key: abs(key - MIDDLE_C))


def _octave_gaps(lengths: frozenset[Fraction]) -> Iterator[Fraction]:
    """Give the octaves that are missing between those that sound."""
    octaves = sorted(filter(is_octave, lengths), reverse=True)
    if octaves:
        length = octaves[0] / 2
        while length > octaves[-1]:
            yield length
            length /= 2


def _gaps_below_mutations(scene: Scene, keyboard: Keyboard, key: int) -> Iterator[Fraction]:
    """Give what the check finds missing below a mutation at this key."""
    for finding in findings_of(scene.organ, scene.combination, scene.music):
        evidence = finding.evidence
        low, high = evidence.keys or (key, key)
        here = evidence.keyboards == (keyboard.id,) and low <= key <= high
        if here and finding.rule == gap_below_mutation.NAME:
            yield from evidence.lengths[1:]


def _standing(
    scene: Scene, keyboard: Keyboard, key: int, lengths: frozenset[Fraction]
) -> Iterator[tuple[Fraction, float]]:
    lowest = max(lengths, default=UNISON)
    above: dict[Fraction, float] = {}
    for one in stand_outs(scene.organ, scene.combination, keyboard.id, key):
        if one.length < lowest and not one.blends:
            above[one.length] = max(one.decibels, above.get(one.length, 0.0))
    return iter(sorted(above.items(), reverse=True))
