"""Mixtures: the composition of a compound stop and where it breaks.

A composition is zones in key order. Lengths are *nominal*: referred to bottom C, so that a rank
which does not break has the same length in every zone.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

from instruments.pitch import LengthError, length_of_ordinal, ordinal

_COUNTED = re.compile(r"(?<![\d./])(\d{1,2}(?:[.,]\s?\d{1,2}){1,9})(?![\d/])")

#: What a mixture of so many ranks is most often made of: common practice, no source.
CUSTOMARY: dict[int, tuple[int, ...]] = {
    2: (19, 22),
    3: (15, 19, 22),
    4: (15, 19, 22, 26),
    5: (12, 15, 19, 22, 26),
    6: (12, 15, 19, 22, 26, 29),
}


@dataclass(frozen=True, slots=True)
class Zone:
    """From ``start`` (a key) upward a mixture has these nominal ``lengths``."""

    start: int
    lengths: tuple[Fraction, ...]


Composition = tuple[Zone, ...]


def lengths_at(composition: Composition, key: int) -> tuple[Fraction, ...]:
    """Give the nominal lengths that sound at a key; none below the first zone."""
    lengths: tuple[Fraction, ...] = ()
    for zone in composition:
        if zone.start > key:
            break
        lengths = zone.lengths
    return lengths


def breaks(composition: Composition) -> tuple[int, ...]:
    """Give the keys at which the composition changes."""
    return tuple(zone.start for zone in composition[1:])


def parse_ordinals(text: str) -> tuple[Fraction, ...]:
    """Find a composition written in counts, ``15.19.22``, and give its lengths (or none).

    Counts of the unison (1) and upward; the text may hold other words around them.
    """
    match = _COUNTED.search(text)
    if match is None:
        return ()
    try:
        return tuple(length_of_ordinal(int(count)) for count in re.split(r"[.,]\s?", match[1]))
    except LengthError:
        return ()


def ordinals_label(lengths: tuple[Fraction, ...]) -> str:
    """Write lengths as counts, ``15.19.22``; lengths below the unison have none and are left out."""
    counts = (ordinal(length) for length in lengths)
    return ".".join(str(count) for count in counts if count is not None)


def customary(ranks: int, start: int = 0) -> Composition:
    """Give the usual composition of so many ranks, without breaks, to be shown as assumed."""
    counts = CUSTOMARY.get(ranks) or CUSTOMARY[6]
    return (Zone(start, tuple(length_of_ordinal(count) for count in counts)),)
