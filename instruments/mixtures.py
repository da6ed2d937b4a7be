"""Mixtures: the composition of a compound stop and where it breaks.

A composition is zones in key order. Lengths are *nominal*: referred to bottom C, so that a rank
which does not break has the same length in every zone.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Any

from instruments.compass import CompassError, key_name, parse_key
from instruments.pitch import LengthError, length_label, length_of_ordinal, ordinal, parse_length

_COUNTED = re.compile(r"(?<![\d./])(\d{1,2}(?:[.,]\s?\d{1,2}){1,9})(?![\d/]|[.,]\s?\d)")

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
    """Give the keys at which the composition changes; a zone that repeats the last is no break."""
    return tuple(
        zone.start
        for below, zone in pairwise(composition)
        if sorted(zone.lengths) != sorted(below.lengths)
    )


def composition_to_list(composition: Iterable[Zone]) -> list[dict[str, Any]]:
    """Give a composition as JSON values, ``[{"from": "C", "lengths": ["2", "1 1/3"]}]``."""
    return [
        {"from": key_name(zone.start), "lengths": [length_label(length) for length in zone.lengths]}
        for zone in composition
    ]


def composition_from_list(data: list[dict[str, Any]]) -> Composition:
    """Read a composition; the inverse of :func:`composition_to_list`.

    Raises:
        LengthError, CompassError: a length or a key that is none, or two zones from one key.
    """
    zones = [
        Zone(parse_key(zone["from"]), tuple(parse_length(length) for length in zone["lengths"]))
        for zone in data
    ]
    for below, zone in pairwise(sorted(zones, key=lambda zone: zone.start)):
        if zone.start == below.start:
            raise CompassError(f"Two zones begin at {key_name(zone.start)}.")
    return tuple(sorted(zones, key=lambda zone: zone.start))


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
    """Write lengths as counts, ``15.19.22``; a length without a count of its own as feet, ``16'``.

    The inverse of :func:`parse_ordinals` where every length has a count.
    """
    return ".".join(map(_count_label, lengths))


def _count_label(length: Fraction) -> str:
    count = ordinal(length)
    # The flat twenty-eighth (4/7) shares its count with 8/15, which the bare number means.
    if count is None or length_of_ordinal(count) != length:
        return length_label(length) + "'"
    return str(count)


def customary(ranks: int, start: int = 0) -> Composition:
    """Give the usual composition of so many ranks, without breaks, to be shown as assumed.

    Fewer than two ranks are taken for two, more than six for six.
    """
    counts = CUSTOMARY[min(max(ranks, 2), 6)]
    return (Zone(start, tuple(length_of_ordinal(count) for count in counts)),)
