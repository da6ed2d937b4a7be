"""Heard: the notes that sound when one key of a stop is played."""

from dataclasses import dataclass
from fractions import Fraction

from instruments.compass import MIDDLE_C, TENOR_C, Compass
from instruments.mixtures import lengths_at
from instruments.organ import Stop
from instruments.pitch import deviation, interval_name, semitones


@dataclass(frozen=True, slots=True)
class Note:
    """One pitch that is heard: its nearest key, the cents it lies above that, its length."""

    key: int
    cents: float
    length: Fraction

    @property
    def interval(self) -> str:
        """Where it lies against the note played, in words."""
        return interval_name(self.length)


def lengths_of(stop: Stop, key: int) -> tuple[Fraction, ...]:
    """Give the lengths that a key of the stop sounds, longest first; none for percussion."""
    if stop.composition:
        return tuple(sorted(lengths_at(stop.composition, key), reverse=True))
    return () if stop.length is None else (stop.length,)


def notes(stop: Stop, key: int) -> tuple[Note, ...]:
    """Give the notes heard when ``key`` is played on this stop alone, lowest first."""
    return tuple(
        Note(key + semitones(length), deviation(length), length) for length in lengths_of(stop, key)
    )


def shown_key(compass: Compass) -> int:
    """Give the C at which to show a stop: middle C, or tenor C when it ends below that."""
    return MIDDLE_C if MIDDLE_C in compass else TENOR_C
