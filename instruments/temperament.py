"""Temperament: key number, temperament and pitch standard to hertz.

A temperament is told by its fifths: by how many cents each of the eleven from E flat up to G sharp
is narrower than pure. The twelfth fifth, G sharp to E flat, takes what is left.
"""

import math
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate

from instruments.pitch import UNISON, harmonic

#: The key that a pitch standard names (a1); ISO 16:1975 gives it 440 Hz.
A1 = 33
ISO_16_HZ = 440.0

PURE_FIFTH = 1200 * math.log2(3 / 2)
PURE_THIRD = 1200 * math.log2(5 / 4)
#: Twelve pure fifths less seven octaves; four pure fifths less two octaves and a pure third.
PYTHAGOREAN_COMMA = 12 * PURE_FIFTH - 7 * 1200
SYNTONIC_COMMA = 4 * PURE_FIFTH - 2 * 1200 - PURE_THIRD
SCHISMA = PYTHAGOREAN_COMMA - SYNTONIC_COMMA

#: C is three fifths up from E flat, where the chain begins.
_C_IN_CHAIN = 3


@dataclass(frozen=True, slots=True)
class Temperament:
    """A tuning of the twelve keys; ``steps`` are cents above C, from C to B."""

    name: str
    steps: tuple[float, ...]

    def cents(self, key: int) -> float:
        """Give the cents of a key above bottom C."""
        octave, step = divmod(key, 12)
        return 1200 * octave + self.steps[step]


def _tempered(name: str, *narrowed: float) -> Temperament:
    # The fifths are Eb-Bb, Bb-F, F-C, C-G, G-D, D-A, A-E, E-B, B-F#, F#-C#, C#-G#.
    chain = list(accumulate((PURE_FIFTH - cents for cents in narrowed), initial=0.0))
    cents = [(one - chain[_C_IN_CHAIN]) % 1200 for one in chain]
    # Seven is its own inverse among twelve: the key of a step stands seven steps on in the chain.
    return Temperament(name, tuple(cents[(7 * step + _C_IN_CHAIN) % 12] for step in range(12)))


_P4, _P6, _S4 = PYTHAGOREAN_COMMA / 4, PYTHAGOREAN_COMMA / 6, SYNTONIC_COMMA / 4

#: By the fifths that the textbooks give them (J. M. Barbour, Tuning and Temperament, 1951, from
#: memory); tests/reference compares the results with tables in print.
EQUAL = Temperament("equal", tuple(100.0 * step for step in range(12)))
WERCKMEISTER_III = _tempered("Werckmeister III", 0, 0, 0, _P4, _P4, _P4, 0, 0, _P4, 0, 0)
KIRNBERGER_III = _tempered("Kirnberger III", 0, 0, 0, _S4, _S4, _S4, _S4, 0, 0, SCHISMA, 0)
VALLOTTI = _tempered("Vallotti", 0, 0, _P6, _P6, _P6, _P6, _P6, _P6, 0, 0, 0)
MEANTONE = _tempered("quarter-comma meantone", *(_S4,) * 11)

TEMPERAMENTS: tuple[Temperament, ...] = (
    EQUAL,
    WERCKMEISTER_III,
    KIRNBERGER_III,
    VALLOTTI,
    MEANTONE,
)


def find_temperament(name: str) -> Temperament | None:
    """Give the temperament of a name, capitals or not, or None when it is not one of ours."""
    wanted = " ".join(name.casefold().split())
    return next((one for one in TEMPERAMENTS if one.name.casefold() == wanted), None)


def frequency(
    key: int,
    length: Fraction = UNISON,
    pitch_hz: float = ISO_16_HZ,
    temperament: Temperament = EQUAL,
) -> float:
    """Give the hertz of a stop at a key, where a1 of an 8-foot stop is ``pitch_hz``.

    A mutation is tuned pure to the unison of its key, as ranks of their own are; one borrowed from
    a unison rank has that rank's tempered pitch instead, at the key it is borrowed from.
    """
    cents = temperament.cents(key) - temperament.cents(A1)
    return pitch_hz * math.exp2(cents / 1200) * float(harmonic(length))
