"""Listening: what can be played of a combination, and its partials made safe for loudspeakers.

A sketch of the pitches, not the sound of the organ (see synthesis.py).
"""

import math
from dataclasses import dataclass
from enum import StrEnum

from instruments.compass import key_typeset
from instruments.organ import KeyboardKind, Organ
from registrations.checks.words import listed, the
from registrations.combination import Combination
from registrations.ladder import KeyboardLadder
from registrations.spectrum import Spectrum, spectrum
from registrations.synthesis import DIAPASON_PEAK, HIGHEST_PEAK

#: Seconds that a sketch lasts.
SECONDS = 2.5
#: So many partials are kept, the strongest: a tablet plays them without effort; our choice.
MOST_PARTIALS = 240
#: A major chord with its octave, in semitones.
_CHORD = (0, 4, 7, 12)


class Playing(StrEnum):
    """How a combination is tried."""

    KEY = "key"
    CHORD = "chord"


@dataclass(frozen=True, slots=True)
class Offer:
    """Keys of a keyboard that can be listened to."""

    keyboard: str
    name: str
    playing: Playing
    keys: tuple[int, ...]

    @property
    def words(self) -> str:
        """Say what is played: ``c1 on the Great``."""
        return f"{listed(map(key_typeset, self.keys))} on {the(self.name)}"


@dataclass(frozen=True, slots=True)
class Partial:
    """One sine: its frequency in hertz and its amplitude against full scale."""

    hertz: float
    amplitude: float


def offers(found: tuple[KeyboardLadder, ...]) -> tuple[Offer, ...]:
    """Give what can be listened to: a key of each keyboard that sounds, of manuals a chord too."""
    return tuple(
        Offer(one.keyboard.id, one.keyboard.name, playing, keys)
        for one in found
        if one.parts
        for playing in Playing
        if (keys := _keys(one, playing))
    )


def _keys(one: KeyboardLadder, playing: Playing) -> tuple[int, ...]:
    if playing is Playing.KEY:
        return (one.key,)
    if one.keyboard.kind is KeyboardKind.PEDAL:
        return ()
    chord = tuple(one.key + step for step in _CHORD if one.key + step in one.keyboard.compass)
    return chord if len(chord) > 1 else ()


def sound_of(organ: Organ, combination: Combination, offer: Offer) -> Spectrum:
    """Give the partials of what is offered."""
    return spectrum(organ, combination, offer.keyboard, *offer.keys)


def sketch(sound: Spectrum) -> tuple[Partial, ...]:
    """Give the strongest partials with amplitudes that cannot exceed the limit together.

    Soft combinations keep their proportions to an Open Diapason, loud ones are held down.
    """
    pairs = zip(sound.frequencies, sound.powers, strict=True)
    amplitudes = [(math.sqrt(power), hertz) for hertz, power in pairs]
    kept = sorted(amplitudes, reverse=True)[:MOST_PARTIALS]
    whole = math.fsum(amplitude for amplitude, _ in kept)
    gain = min(DIAPASON_PEAK, HIGHEST_PEAK / max(whole, 1.0))
    return tuple(Partial(hertz, gain * amplitude) for amplitude, hertz in kept)
