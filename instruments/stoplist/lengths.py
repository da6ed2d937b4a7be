"""Lengths: figures in a line that mean feet, in every dress that printers give them."""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from instruments.pitch import ROUNDED_LABELS, parse_length

#: Lengths that stops are labelled with: octaves, and the rows between them (harmonics of 64 feet).
OCTAVES = frozenset(Fraction(64, 2**step) for step in range(10))
_PIPE_COUNT = re.compile(r"(?<=[^\W\d])\s(\d{2,3})$")
_MUTATIONS = (
    "21 1/3;12 4/5;10 2/3;9 1/7;7 1/9;6 2/5;5 1/3;4 4/7;3 5/9;3 1/5;2 2/3;2 2/7;1 7/9;1 3/5;"
    "1 5/11;1 1/3;1 3/13;1 1/7;1 1/15;8/9;4/5;8/11;2/3;8/13;4/7;8/15;2/5;1/3;1/6;1/5;16/19;16/17;"
    "8/19;8/17"
)
MUTATIONS = frozenset(map(parse_length, _MUTATIONS.split(";")))
KNOWN = OCTAVES | MUTATIONS | frozenset(ROUNDED_LABELS)
_ROUNDABLE = {length: float(length) for length in OCTAVES | MUTATIONS}
#: Spanish palms of the open pipe, and the feet that they mean: common practice, no source.
PALMS = {52: 32, 26: 16, 24: 16, 13: 8, 14: 8, 12: 8, 7: 4, 6: 4, 3: 2}

_UNIT = (
    r"(?:\s?(?:['’′´`‘]{1,2}|[\"”″])|\s?(?:ft|feet|foot|fuß|fuss|füssig|füßig|pieds?|pds?|voets?|"
    r"piedi|piede|pies?|pés|fots?|fod|vt|stóp|stopy|fusz)\b\.?|\s?[pPfFvV]\.(?!\s*\d))"
)
_FRACTION = r"(?P<over>\d{1,3})\s?[/⁄]\s?(?P<under>\d{1,2})"
_GLYPH = r"(?P<glyph>[½⅓⅔¼¾⅕⅖⅗⅘⅐⅑⅛⅜⅝⅞⅙⅚])"
LENGTH = re.compile(
    rf"(?<![\w./,])(?P<length>(?P<palms>\d{{1,2}})(?P<half>\s?½|\s1/2)?\s?palm\w*\.?"
    rf"|(?<=\bde )(?P<span>52|26|13)"
    rf"|(?P<feet>\d{{1,2}})\s?(?:ft|feet|foot)\.?\s(?P<inches>\d)\s?(?:in|inch|inches)\b\.?"
    rf"|(?:(?P<whole>\d{{1,2}})(?:\s?['’′+.·-]\s?|\s+|(?=[½-⅞¼-¾])))?(?:{_FRACTION}|{_GLYPH})"
    rf"(?P<unit>{_UNIT})?"
    rf"|(?P<decimal>\d{{1,2}}[.,]\d{{1,3}})(?P<unit2>{_UNIT})?"
    rf"|(?P<integer>\d{{1,2}})(?P<unit3>{_UNIT})?)(?![\w/%°])(?![.,]\d)",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Figure:
    """A length as found in a text: its feet, how and where it is written.

    ``sure`` is whether feet are written; a bare number may count pipes or stops instead.
    """

    length: Fraction
    written: str
    sure: bool
    start: int
    end: int


@lru_cache(maxsize=2048)
def figures_in(text: str) -> tuple[Figure, ...]:
    """Give every figure of a text that can be the length of a stop, in order."""
    found = (_figure(match) for match in LENGTH.finditer(text))
    return tuple(one for one in found if one is not None)


def _figure(match: re.Match[str]) -> Figure | None:
    palms = match["span"]
    length = Fraction(PALMS[int(palms)]) if palms else _known(match["length"])
    if length is None:
        return None
    sure = any(match[part] for part in ("palms", "span", "feet", "unit", "unit2", "unit3"))
    return Figure(
        length, match[0].strip(), sure or not match["integer"], match.start(), match.end()
    )


@lru_cache(maxsize=4096)
def _known(written: str) -> Fraction | None:
    match = LENGTH.fullmatch(written)
    length = _length(match) if match else None
    return length if length in KNOWN else None


def _length(match: re.Match[str]) -> Fraction | None:
    if match["palms"]:
        feet = PALMS.get(int(match["palms"]))
        return None if feet is None else Fraction(feet)
    if match["feet"]:
        return Fraction(int(match["feet"])) + Fraction(int(match["inches"]), 12)
    if match["integer"]:
        return Fraction(int(match["integer"]))
    if match["decimal"]:
        return _nearest(float(match["decimal"].replace(",", ".")))
    return _mixed(match)


def _mixed(match: re.Match[str]) -> Fraction | None:
    whole = int(match["whole"] or 0)
    if match["glyph"]:
        return whole + parse_length(match["glyph"])
    over, under = match["over"], int(match["under"])
    if under == 0:
        return None
    length = whole + Fraction(int(over), under)
    if whole or length in KNOWN:
        return length
    # 22/3 is 2 2/3 with its gap lost in print.
    return int(over[:-1] or 0) + Fraction(int(over[-1]), under)


def _nearest(value: float) -> Fraction | None:
    """Give the length that a decimal rounds: 2.66, 2.67 and 2.6 are 2 2/3."""
    near = min(_ROUNDABLE, key=lambda length: abs(_ROUNDABLE[length] - value))
    return near if abs(float(near) - value) < 0.035 * value else None


def without_pipe_count(text: str) -> str:
    """Take the number of its pipes off a stop whose length stands before its name."""
    count = _PIPE_COUNT.search(text)
    before = figures_in(text[: count.start()]) if count else []
    if count and before and (before[0].sure or int(count[1]) > 32):
        return text[: count.start()]
    return text
