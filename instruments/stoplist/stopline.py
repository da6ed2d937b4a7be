"""Stopline: one line of a list as a stop: its name, length, ranks, composition, remarks."""

import re
from dataclasses import dataclass
from fractions import Fraction

from instruments.lexicon import Match, find_name
from instruments.mixtures import parse_ordinals
from instruments.pitch import ROUNDED_LABELS, LengthError, length_typeset, parse_length

_NUMBERING = re.compile(r"^\s*(?:\(?\d{1,3}[.):]|[-•*·–—])\s+")
_REMARK = re.compile(r"[(\[]([^()\[\]]*)[)\]]")
_LENGTH = re.compile(
    r"(?<![\w./])(?P<length>\d{1,2}(?:[ -]\d{1,2}/\d{1,2}|\s?[½⅓⅔¼¾⅕⅖⅗⅘⅐⅛⅑])?|\d{1,2}/\d{1,2}|[½⅓⅔¼¾⅕⅖⅗⅘])"
    r"\s?(?P<unit>['’′]|ft\b\.?|feet\b|foot\b)?(?![\w./])"
)
_RANKS = re.compile(
    r"\b(?P<roman>X?(?:IX|IV|V?I{0,3}))\b(?:[ -]?(?:ranks?|rks?)\b\.?)?"
    r"|\b(?P<count>\d{1,2})[ -]?(?:ranks?|rks?)\b\.?",
)
_COUNTED = re.compile(r"\b\d{1,2}(?:[.,]\s?\d{1,2}){1,9}\b")
_ROMAN = {"I": 1, "V": 5, "X": 10}
_PROSE = re.compile(
    r"[?!:;]|\b(?:is|was|are|were|has|have|by|this|that|which|built|rebuilt)\b", re.I
)
MOST_WORDS = 6


@dataclass(frozen=True, slots=True)
class StopLine:
    """A line read as a stop; ``doubts`` are what had to be guessed, in words."""

    name: str
    length: Fraction | None
    ranks: int
    composition: tuple[Fraction, ...]
    remarks: tuple[str, ...]
    match: Match | None
    doubts: tuple[str, ...]


def read_stop(text: str, *, pedal: bool) -> StopLine | None:
    """Read a line as a stop; None when it has neither a figure nor a known name."""
    remarks = tuple(part.strip() for part in _REMARK.findall(text))
    bare = _NUMBERING.sub("", _REMARK.sub(" ", text)).replace("\t", " ").strip(" .,;")
    counted = _COUNTED.search(bare)
    composition = parse_ordinals(counted[0]) if counted else ()
    before = bare[: counted.start()] if counted and composition else bare
    length_at = _last(_LENGTH, before)
    ranks_at = _last_ranks(before[: length_at.start()] if length_at else before) or (
        _last_ranks(before[length_at.end() :]) if length_at else None
    )
    name = _name(before, length_at, ranks_at)
    if not name or len(name.split()) > MOST_WORDS or _PROSE.search(name):
        return None
    match = find_name(name, pedal=pedal)
    figured = bool(length_at or composition or ranks_at)
    if not figured and (match is None or not match.exact):
        return None
    ranks = len(composition) or _ranks(ranks_at)
    length, doubts = _length(length_at, match, ranks, bool(composition))
    return StopLine(name, length, ranks, composition, remarks, match, doubts)


def _last(pattern: re.Pattern[str], text: str) -> re.Match[str] | None:
    return next(iter(reversed(list(pattern.finditer(text)))), None)


def _last_ranks(text: str) -> re.Match[str] | None:
    found = [one for one in _RANKS.finditer(text) if one["roman"] or one["count"]]
    return found[-1] if found and text[: found[-1].start()].strip() else None


def _name(text: str, length: re.Match[str] | None, ranks: re.Match[str] | None) -> str:
    ends = [one.start() for one in (length, ranks) if one and text[: one.start()].strip()]
    return re.sub(r"\s+", " ", text[: min(ends, default=len(text))]).strip(" .,;-–…")


def _ranks(found: re.Match[str] | None) -> int:
    if found is None:
        return 1
    if found["count"]:
        return max(1, min(60, int(found["count"])))
    values = [_ROMAN[letter] for letter in found["roman"]]
    return sum(-value if value < max(values[at:]) else value for at, value in enumerate(values))


def _length(
    found: re.Match[str] | None, match: Match | None, ranks: int, composed: bool
) -> tuple[Fraction | None, tuple[str, ...]]:
    if found is None:
        if composed or ranks > 1 or match is None or match.entry.compound:
            return None, ()
        usual = match.entry.lengths
        if not usual:
            return None, ()
        return usual[0], (
            f"no length is written; {match.entry.name} is most often {length_typeset(usual[0])}",
        )
    try:
        written = parse_length(found["length"])
    except LengthError:
        return None, (f"“{found['length']}” is no length",)
    true = ROUNDED_LABELS.get(written)
    if true is None or (match and written in match.entry.lengths):
        return written, ()
    return true, (f"{length_typeset(written)} is a rounded label for {length_typeset(true)}",)
