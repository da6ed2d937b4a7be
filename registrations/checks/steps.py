"""Steps: how far it is from a pitch down to the next that sounds, and what is missing between."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

#: Up to an octave a step blends; from two octaves it never does (common practice, no source).
BLENDS, BREAKS = Fraction(2), Fraction(4)


@dataclass(frozen=True, slots=True)
class Step:
    """From a length to the next longer one that sounds."""

    length: Fraction
    below: Fraction

    @property
    def ratio(self) -> Fraction:
        """How many times as long the lower one is: 2 for an octave."""
        return self.below / self.length

    @property
    def cents(self) -> float:
        """The pure interval in cents, to a thousandth."""
        return round(1200 * math.log2(self.ratio), 3)

    @property
    def missing(self) -> tuple[Fraction, ...]:
        """The octaves of the lower pitch that would lead up to the higher."""
        found, octave = [], self.below / 2
        while octave > self.length:
            found.append(octave)
            octave /= 2
        return tuple(found)

    @property
    def octaves(self) -> tuple[Fraction, ...]:
        """The octaves of the higher pitch that would lead down to the lower, longest first."""
        found, octave = [], self.length * 2
        while octave < self.below:
            found.append(octave)
            octave *= 2
        return tuple(reversed(found))


def wide_steps(lengths: tuple[Fraction, ...]) -> Iterator[Step]:
    """Give the steps of more than an octave in lengths that are given longest first."""
    for below, length in pairwise(lengths):
        if below > BLENDS * length:
            yield Step(length, below)
