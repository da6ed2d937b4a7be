"""Keys and compasses: the only place where key names are made or parsed.

A key is an integer, the semitones above the C of the 8-foot octave: C (bottom) is 0, c (tenor) 12,
c1 (middle) 24. The octave below bottom C is written doubled (GG is -5).
"""

import re
from dataclasses import dataclass

MIDDLE_C = 24
TENOR_C = 12
#: The keys that have names here: CC to b6.
LOWEST, HIGHEST = -12, 95

_NAMES = ("c", "c#", "d", "eb", "e", "f", "f#", "g", "g#", "a", "bb", "b")
_SEMITONES = {"c": 0, "d": 2, "e": 4, "f": 5, "g": 7, "a": 9, "b": 11}
_KEY = re.compile(
    r"(?:(?P<upper>[A-G])(?P<doubled>(?P=upper)?)|(?P<lower>[a-g]))(?P<sign>[#♯b♭]?)(?P<octave>[1-6]?)"
)
_DASH = re.compile(r"\s*(?:-|–|—|\bto\b)\s*", re.IGNORECASE)


class CompassError(ValueError):
    """Text that is not a key or a compass; the message is a sentence for the reader."""


def parse_key(text: str) -> int:
    """Read a key name (``C``, ``c``, ``f#1``, ``e♭2``, ``GG``) as semitones above bottom C.

    Raises:
        CompassError: the text names no key.
    """
    match = _KEY.fullmatch(text.strip())
    if match is None:
        raise CompassError(f"“{text}” is not a key. Write C, c, c1 (middle C), f#2 and so on.")
    if match["octave"] and match["upper"]:
        raise CompassError(f"“{text}” is not a key. Numbered octaves have small letters: c1, g3.")
    base = (
        12 + 12 * int(match["octave"] or 0) if match["lower"] else (-12 if match["doubled"] else 0)
    )
    shift = {"": 0, "#": 1, "♯": 1, "b": -1, "♭": -1}[match["sign"]]
    key = base + _SEMITONES[(match["upper"] or match["lower"]).lower()] + shift
    if not LOWEST <= key <= HIGHEST:
        raise CompassError(f"“{text}” is not a key. They go from CC to b6.")
    return key


def key_name(key: int) -> str:
    """Name a key; the inverse of :func:`parse_key` (28 is ``e1``, 10 is ``Bb``, -5 is ``GG``)."""
    octave, step = divmod(key, 12)
    name = _NAMES[step]
    if octave <= 0:
        return name[0].upper() * (1 - octave) + name[1:]
    return name + (str(octave - 1) if octave > 1 else "")


def key_typeset(key: int) -> str:
    """Name a key for eyes, with a real sharp or flat: ``f♯1``."""
    name = key_name(key)
    return name[0] + name[1:].replace("#", "♯").replace("b", "♭")


@dataclass(frozen=True, slots=True)
class Compass:
    """The keys from ``low`` to ``high``, both included, less ``missing`` ones (a short octave)."""

    low: int
    high: int
    missing: frozenset[int] = frozenset()

    def __contains__(self, key: int) -> bool:
        return self.low <= key <= self.high and key not in self.missing

    def __len__(self) -> int:
        return len(self.keys())

    def keys(self) -> tuple[int, ...]:
        """Give the keys from low to high."""
        return tuple(key for key in range(self.low, self.high + 1) if key not in self.missing)


def parse_compass(text: str) -> Compass:
    """Read a compass: ``C-g3``, ``C,D-c3`` (no bottom C sharp), ``CC-a3``, ``c1-c4``.

    A doubled low note with a single-letter octave to follow (``CC-a3``, ``CCC-f1``) is the English
    name of the bottom key, where manuals begin at CC and pedals at CCC: it is read as C.

    Raises:
        CompassError: the text is not two keys in order.
    """
    ends = _DASH.split(text.strip())
    if len(ends) != 2:
        raise CompassError(f"“{text}” is not a compass. Write the two end keys, like C-g3.")
    lows = [_low_key(part) for part in ends[0].split(",")]
    high = parse_key(ends[1])
    if sorted(set(lows)) != lows or lows[0] == high or lows[-1] > high:
        raise CompassError(f"“{text}” is not a compass: its keys do not rise.")
    missing = frozenset(range(lows[0], lows[-1])) - frozenset(lows)
    return Compass(lows[0], high, missing)


def _low_key(text: str) -> int:
    return 0 if text.strip() in {"CC", "CCC"} else parse_key(text)


def compass_name(compass: Compass) -> str:
    """Write a compass; the inverse of :func:`parse_compass`."""
    gaps = [key for key in compass.missing if compass.low <= key <= compass.high]
    lows = [compass.low]
    if gaps:
        lows += [key for key in range(compass.low + 1, max(gaps) + 2) if key not in compass.missing]
    return ",".join(map(key_name, lows)) + "-" + key_name(compass.high)


def compass_of_size(size: int) -> Compass:
    """Give the compass of ``size`` keys from bottom C: 61 is C-c4, 30 is C-f1."""
    return Compass(0, size - 1)
