"""Ranks: how many rows of pipes a line gives a stop, and what they are made of."""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from instruments.pitch import length_of_ordinal
from instruments.stoplist.lengths import figures_in

_WORD = (
    r"(?:fach|fachig|fch|ranks?|rks?|rgs?|rangs?|rg|sterk|sterck|st|file|filas?|hileras?|hil|hs?|"
    r"kor|kör|korig|chor|chör|köre|körig|koren|chörig|x|fag|radig|rijen|fold|fois|řad|rzędy|rz)\b\.?"
)
_ROMAN_FIGURE = r"(?=[IVX])X{0,3}(?:IX|IV|V?I{0,3})"
RANKS = re.compile(
    rf"(?<![\w.,/])(?P<count>\d{{1,2}})(?:\s?[-–/]\s?(?P<to>\d{{1,2}}))?\s?-?\s?{_WORD}"
    rf"|(?<![\w.,/])(?P<doubtful>\d{{1,2}})(?:\s?[-–]\s?\d{{1,2}})?\s?-?f\b\.?"
    rf"|(?<![\w'’])(?P<roman>{_ROMAN_FIGURE})(?:\s?[-–/]\s?(?P<romanto>{_ROMAN_FIGURE}))?"
    rf"(?![\w'’])(?:\s?-?\s?(?:{_WORD}|f\b\.?))?",
)
_ORDINALS = re.compile(
    r"(?<![\w./])\d{1,2}(?P<sign>\.\s?|,\s?|\s?[-–+]\s?| )\d{1,2}(?:(?P=sign)\d{1,2}){0,8}"
    r"(?![\w/'’′])"
)
_ROMAN_ORDINALS = re.compile(
    rf"(?<!\w){_ROMAN_FIGURE}(?:\s?(?:[-–,.+/]|\be\b)\s?{_ROMAN_FIGURE})+(?!\w)"
)
_FEET = re.compile(
    r"(?:\d{1,2}(?:[ -]\d{1,2}/\d{1,2}|\s?[½⅓⅔¼¾⅕⅖⅗⅘⅐⅑⅛])?|\d/\d{1,2}|[½⅓⅔¼¾⅕⅖⅗⅘])['’′´]?"
    r"(?:\s?[+,]\s?(?:\d{1,2}(?:[ -]\d{1,2}/\d{1,2}|\s?[½⅓⅔¼¾⅕⅖⅗⅘⅐⅑⅛])?|\d/\d{1,2}|[½⅓⅔¼¾⅕⅖⅗⅘])"
    r"['’′´]?)+"
)
#: Counts that ranks of a chorus have.
_COUNTS = frozenset({1, 3, 5, 8, 10, 12, 15, 17, 19, 21, 22, 24, 26, 28, 29, 31, 33, 36, 40, 43})
_VALUES = {"I": 1, "V": 5, "X": 10}


@dataclass(frozen=True, slots=True)
class Ranks:
    """A number of ranks as found: whether a Roman figure, alone, says it, and where it stands."""

    count: int
    most: int
    roman: bool
    doubtful: bool
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Composed:
    """The lengths of a compound stop as found, and where they stand."""

    lengths: tuple[Fraction, ...]
    start: int
    end: int


def roman_value(figure: str) -> int:
    """Give the value of a Roman figure of I, V and X."""
    values = [_VALUES[letter] for letter in figure]
    return sum(-one if one < max(values[at:]) else one for at, one in enumerate(values))


@lru_cache(maxsize=2048)
def ranks_in(text: str) -> tuple[Ranks, ...]:
    """Give every number of ranks in a text, in order; 60 ranks are the most there are."""
    found = [_ranks(match) for match in RANKS.finditer(text)]
    return tuple(one for one in found if 0 < one.count <= 60)


def _ranks(match: re.Match[str]) -> Ranks:
    if match["roman"]:
        count = roman_value(match["roman"])
        most = roman_value(match["romanto"]) if match["romanto"] else count
        alone = match[0].strip() in {match["roman"], f"{match['roman']}."}
    else:
        count = int(match["count"] or match["doubtful"])
        most, alone = int(match["to"] or count), False
    doubtful = match["doubtful"] is not None
    return Ranks(count, max(count, most), alone, doubtful, match.start(), match.end())


@lru_cache(maxsize=2048)
def composition_in(text: str) -> Composed | None:
    """Find a composition: 15.19.22, XIX-XXII or 2 2/3' + 1 3/5'; None where there is none."""
    for match in _ORDINALS.finditer(text):
        counts = re.findall(r"\d+", match[0])
        lengths = _counted([int(count) for count in counts])
        if lengths and (len(counts) > 2 or " " not in match[0]):
            return Composed(lengths, match.start(), match.end())
    for match in _ROMAN_ORDINALS.finditer(text):
        lengths = _counted([roman_value(one) for one in re.findall("[IVX]+", match[0])])
        if lengths:
            return Composed(lengths, match.start(), match.end())
    return _in_feet(text)


def _counted(counts: list[int]) -> tuple[Fraction, ...]:
    """Give the lengths of counts that rise and end above the octave, none otherwise."""
    if sorted(counts) != counts or counts[-1] < 12 or not _COUNTS.issuperset(counts):
        return ()
    return tuple(length_of_ordinal(count) for count in counts)


def _in_feet(text: str) -> Composed | None:
    for match in _FEET.finditer(text):
        lengths = tuple(one.length for one in figures_in(match[0]))
        parts = len(re.split(r"\s?[+,]\s?", match[0]))
        if len(lengths) == parts and any(sign in match[0] for sign in "+/⅔⅓⅗"):
            return Composed(lengths, match.start(), match.end())
    return None
