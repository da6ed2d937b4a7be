"""Roughness: how partials that lie close together grate, and how slowly nearly equal ones beat.

Sensory roughness after W. A. Sethares, Local consonance and the relationship between timbre and
scale, J. Acoust. Soc. Am. 94, 1993, 1218: of every pair of partials, by their distance as a share
of the distance that grates most at their pitch. It says nothing of harmony, only of roughness.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import log2

import numpy as np
from numpy.typing import ArrayLike

from instruments.organ import Organ
from instruments.pitch import UNISON, semitones
from instruments.spectra import MODEL, ToneModel
from instruments.temperament import EQUAL, find_temperament, frequency
from registrations.combination import Combination
from registrations.spectrum import Spectrum, spectrum


@dataclass(frozen=True, slots=True)
class Curve:
    """The constants of the curve ``exp(-rise * x) - exp(-fall * x)``.

    ``x`` is the distance in hertz times ``nearest / (slope * lower + offset)``, where ``lower`` is
    the lower partial in hertz.
    """

    nearest: float = 0.24
    slope: float = 0.0207
    offset: float = 18.96
    rise: float = 3.5
    fall: float = 5.75


#: As most programs have them, among them dissonant 0.1.1; not checked against the paper itself.
SETHARES_1993 = Curve()
#: As other programs round them.
ROUNDED = Curve(slope=0.021, offset=19.0)


def sethares(frequencies: ArrayLike, amplitudes: ArrayLike, curve: Curve = SETHARES_1993) -> float:
    """Give the roughness of partials, in hertz and with any amplitudes: each pair counted once.

    It grows with the square of the amplitudes. Two partials of amplitude 1 have 0.18 at most.
    """
    order = np.argsort(np.asarray(frequencies, dtype=np.float64), kind="stable")
    hertz = np.asarray(frequencies, dtype=np.float64)[order]
    strength = np.asarray(amplitudes, dtype=np.float64)[order]
    lower, upper = np.triu_indices(hertz.size, k=1)
    distance = hertz[upper] - hertz[lower]
    x = distance * curve.nearest / (curve.slope * hertz[lower] + curve.offset)
    pairs = strength[lower] * strength[upper]
    return float((pairs * (np.exp(-curve.rise * x) - np.exp(-curve.fall * x))).sum())


def roughness(sound: Spectrum, curve: Curve = SETHARES_1993) -> float:
    """Give the roughness of a sound for its power, so that it does not depend on how loud it is.

    Amplitudes are the roots of powers; 0 for silence and for a single partial.
    """
    if not sound.powers:
        return 0.0
    return sethares(sound.frequencies, np.sqrt(sound.powers), curve) / sound.power


def chord_roughness(
    organ: Organ,
    combination: Combination,
    keyboard: str,
    keys: Iterable[int],
    model: ToneModel = MODEL,
    curve: Curve = SETHARES_1993,
) -> float:
    """Give the roughness of keys played together, in the organ's temperament and pitch.

    Raises:
        KeyError: the organ has no such keyboard.
        ValueError: no key is given.
    """
    return roughness(spectrum(organ, combination, keyboard, *keys, model=model), curve)


def beat(organ: Organ, length: Fraction, key: int) -> float:
    """Give the hertz at which a pure rank beats with the key whose pitch it doubles.

    Positive where that key, at 8 feet, is the higher: of a pure 2 2/3 at c1 the key is g2.
    """
    temperament = find_temperament(organ.temperament) or EQUAL
    doubled = frequency(key + semitones(length), UNISON, organ.pitch_hz, temperament)
    return doubled - frequency(key, length, organ.pitch_hz, temperament)


def resultant_cents(lower: float, upper: float, wanted: float) -> float:
    """Give the cents by which the difference of two frequencies lies above a wanted one, in hertz.

    This is the 32-foot effect of a 16 and a 10 2/3. It is no rank: in the air are only beats, and
    what is heard is made by the ear (C. Pykett, 2011; E. Terhardt, Acoustic bass of pipe organ).
    """
    return 1200 * log2((upper - lower) / wanted)
