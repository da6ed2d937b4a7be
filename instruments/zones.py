"""Zones as a person writes them: the ranks of a mixture from a key upward, one zone a line.

``C 19.22.26`` counts the scale, ``c 2 1 1/3 1`` gives feet; the two may stand in one line when the
feet have a prime.
"""

import math
import re
from collections.abc import Iterator
from fractions import Fraction

from instruments.compass import CompassError, key_name, parse_key
from instruments.mixtures import Composition, Zone, ordinals_label
from instruments.pitch import LengthError, length_label, length_of_ordinal, parse_length

#: Bare whole numbers from here on are counts of the scale: 10 is the tenth, 8 is eight feet.
_FIRST_LONE_COUNT = 10
_MOST_RANKS = 60
#: A pipe's real length says its nominal one when it is no further off than this many cents.
_NEAR = 60.0

_LINE = re.compile(r"(?P<key>[A-Ga-g]{1,2}[#♯b♭]?\d?(?=[\s:]|$))?\s*:?\s*(?P<ranks>.*)")
_GLYPHS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
_FIGURE = re.compile(
    rf"(?P<feet>\d+\s+\d+/\d+|\d+/\d+|\d*[{_GLYPHS}]|\d+(?=\s*['′’]))\s*['′’]?|(?P<bare>\d+)"
)
_STRAY = re.compile(r"[^\s.,;+·&-]+")

#: The lengths that ranks have: unisons, fifths, thirds, sevenths and ninths, in every octave.
_LENGTHS = tuple(
    Fraction(32, place * 2**octave) for place in (1, 3, 5, 7, 9, 15) for octave in range(9)
)


class ZoneError(ValueError):
    """Text that tells no composition; the message says which line and what is wrong."""


def parse_zones(text: str, *, speaking: bool = False) -> Composition:
    """Read a composition, a zone a line; a first line without a key begins at bottom C.

    ``speaking``: feet are the real lengths of the pipes at the zone's own key, as some builders
    write them, and are turned into nominal ones.

    Raises:
        ZoneError: a line that is not a key and ranks, or two zones from one key.
    """
    zones: dict[int, Zone] = {}
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip():
            continue
        try:
            zone = _zone(line.strip(), speaking=speaking, first=not zones)
        except (CompassError, LengthError) as error:
            raise ZoneError(f"Line {number}: {error}") from error
        if zone.start in zones:
            raise ZoneError(f"Line {number}: two zones begin at {key_name(zone.start)}.")
        zones[zone.start] = zone
    return tuple(zones[start] for start in sorted(zones))


def _zone(line: str, *, speaking: bool, first: bool) -> Zone:
    match = _LINE.fullmatch(line)
    key, ranks = (match["key"], match["ranks"]) if match else (None, line)
    if key is None and not first:
        raise CompassError(f"“{line[:60]}” names no key. Begin it with one, like c or f#1.")
    start = parse_key(key) if key else 0
    lengths = tuple(_ranks(ranks))
    if not 1 <= len(lengths) <= _MOST_RANKS:
        raise LengthError("a zone has one rank at least and 60 at most. Write C 19.22.26.")
    return Zone(start, tuple(nominal(one, start) for one in lengths) if speaking else lengths)


def _ranks(text: str) -> Iterator[Fraction]:
    figures = list(_FIGURE.finditer(text))
    stray = _STRAY.search(_FIGURE.sub(" ", text))
    if stray:
        raise LengthError(f"“{stray[0][:60]}” is no rank. Write 19.22.26 or 1 1/3, 1, 2/3.")
    bare = [int(one["bare"]) for one in figures if one["bare"]]
    counted = _are_counts(bare, any("/" in one[0] for one in figures), "." in text)
    for one in figures:
        if one["feet"] or not counted:
            yield parse_length(one["feet"] or one["bare"])
        else:
            yield length_of_ordinal(int(one["bare"]))


def _are_counts(bare: list[int], fractions: bool, dotted: bool) -> bool:
    """Tell counts (they rise: 12 15 19) from whole feet (they fall: 4 2 1)."""
    if dotted or not bare:
        return True
    if len(bare) == 1:
        return bare[0] >= _FIRST_LONE_COUNT and not fractions
    return bare == sorted(bare) and not fractions


def nominal(length: Fraction, key: int) -> Fraction:
    """Give the nominal length of the pipe that really is ``length`` feet long at ``key``.

    Pipes halve each octave; between the C's the nearest length that ranks have is taken.

    Raises:
        LengthError: no rank has such a pipe at that key.
    """
    wanted = math.log2(length) + key / 12
    nearest = min(_LENGTHS, key=lambda one: abs(math.log2(one) - wanted))
    if 1200 * abs(math.log2(nearest) - wanted) > _NEAR:
        raise LengthError(f"no rank has a pipe of {length_label(length)} feet at {key_name(key)}.")
    return nearest


def zones_text(composition: Composition) -> str:
    """Write a composition, a zone a line; the inverse of :func:`parse_zones`."""
    return "\n".join(f"{key_name(zone.start)} {_ranks_text(zone.lengths)}" for zone in composition)


def _ranks_text(lengths: tuple[Fraction, ...]) -> str:
    if len(lengths) == 1:
        return length_label(lengths[0]) + "'"
    return ordinals_label(lengths)
