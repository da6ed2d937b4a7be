"""Stopline: one piece of a list as a stop: its name, length, ranks, composition, remarks."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from instruments.figures import roman
from instruments.lexicon import Match, find_name
from instruments.stoplist.lengths import Figure, figures_in, without_pipe_count
from instruments.stoplist.names import MARKS, cleaned, name_match, without_half
from instruments.stoplist.ranks import Composed, Ranks, composition_in, ranks_in
from instruments.stoplist.tables import words, words_of
from instruments.stoplist.usual import true_length, usual_length

MOST_WORDS, LONGEST = 7, 240
_IN_BRACKETS = re.compile(r"\(([^()]*)\)|\[([^\[\]]*)\]|\{([^{}]*)\}")
_NUMBERED = re.compile(
    r"\b(?:no|nr|num|n°|nº|№|#)\.?\s?\d{1,2}\b|(?<=\w)\s\d(?=\s+\d{1,2}(?![\d/])(?!\s?\d?/))"
    r"|\bin\s[IVX]+\b|\b(?:decim|vigesim|trigesim)[ao]\s[IVX]+\b",
    re.I,
)
_COUNTED = re.compile(
    r"[,;–-]?\s*(?<!feet )(?<!foot )(?<!ft )(?<!ft\. )\b\d{1,4}\s?(?:pipes?|notes?|pfeifen|töne|"
    r"tasten|pijpen|tonen|tuyaux|tubos|canne|bells?|tubes?|bars?|chimes?|mm|cm|inch(?:es)?|piber|pipor|röhren|stäbe|glocken|plates?|harps?)\b\.?",
    re.I,
)
_PROSE = re.compile(r"[?!]|[:;]\s|\.\s+[A-ZÄÖÜ]\w+\s+\w+\s+\w+")


@dataclass(frozen=True, slots=True)
class StopLine:
    """A piece read as a stop; ``doubts`` are what had to be guessed, in words."""

    name: str
    length: Fraction | None
    ranks: int
    composition: tuple[Fraction, ...]
    remarks: tuple[str, ...]
    match: Match | None
    figured: bool
    doubts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Found:
    """The figures of a piece: at most one length, number of ranks and composition."""

    length: Figure | None
    ranks: Ranks | None
    composed: Composed | None

    def spans(self) -> list[tuple[int, int]]:
        those = (self.length, self.ranks, self.composed)
        return sorted((one.start, one.end) for one in those if one is not None)


@lru_cache(maxsize=2048)
def read_stop(text: str, *, pedal: bool, language: str = "", bare: bool = False) -> StopLine | None:
    """Read a piece as a stop; None when it has neither a figure nor a known name.

    ``bare`` is whether stops stand without figures around it, where a name like one is enough.
    """
    asked = text.rstrip().endswith(("?", "!"))
    if asked or len(text) > LONGEST or not any(letter.isalpha() for letter in text):
        return None
    plain, remarks = _remarks_out(re.sub(r"\s+", " ", text))
    found = _figures(plain, pedal, language)
    name, after = without_half(*_around(plain, found))
    match = name_match(name, language, pedal=pedal)
    if not _is_name(name, match, figured=bool(found.spans()), bare=bare):
        return None
    return _settled(name, _kept(match, found), found, match, (*remarks, *after))


def _remarks_out(text: str) -> tuple[str, tuple[str, ...]]:
    """Part what stands in brackets, and counts of pipes, from a piece; figures are left in it."""
    remarks: list[str] = []

    def out(match: re.Match[str]) -> str:
        inner = next(group for group in match.groups() if group is not None).strip()
        if _only_figures(inner):
            return f" {inner} "
        remarks.append(inner)
        return " "

    bare = _IN_BRACKETS.sub(out, text)
    bare = without_pipe_count(re.sub(r"\s+", " ", _COUNTED.sub(" ", bare)).strip(MARKS))
    return bare, tuple(one for one in remarks if one)


def _only_figures(text: str) -> bool:
    composed = composition_in(text)
    if composed:
        text = _masked(text, [(composed.start, composed.end)])
    figures, ranks = figures_in(text), ranks_in(text)
    spans = [(one.start, one.end) for one in figures] + [(one.start, one.end) for one in ranks]
    sure = any(one.sure for one in figures) or bool(ranks) or composed is not None
    return sure and not _masked(text, spans).replace("#", "").strip(MARKS)


def _figures(text: str, pedal: bool, language: str) -> _Found:
    composed = composition_in(text)
    masked = _masked(text, [(composed.start, composed.end)] if composed else [])
    masked = _NUMBERED.sub(lambda match: "#" * len(match[0]), masked)
    ranks = _ranks(masked, text)
    if ranks and composed:
        ranks = replace(ranks, doubtful=False)
    if ranks and not ranks.doubtful:
        masked = _masked(masked, [(ranks.start, ranks.end)])
    length = _length_of(masked, pedal, language)
    if ranks and ranks.doubtful:
        ranks, length = _undoubted(ranks, length, masked)
    return _Found(length, ranks, composed)


def _masked(text: str, spans: list[tuple[int, int]]) -> str:
    for start, end in spans:
        text = text[:start] + "#" * (end - start) + text[end:]
    return text


def _ranks(masked: str, text: str) -> Ranks | None:
    found = [
        one
        for one in ranks_in(masked)
        if not one.roman or text[: one.start].strip(MARKS) or _heads_compound(text[one.end :])
    ]
    found = [one for one in found if not (one.roman and one.count > 12)]
    return found[-1] if found else None


def _heads_compound(text: str) -> bool:
    """Say whether the name that follows is of a stop of several ranks: III Mixture."""
    match = find_name(cleaned(re.split(r"\d", text, maxsplit=1)[0]))
    return match is not None and match.entry.compound


def _undoubted(
    ranks: Ranks, length: Figure | None, text: str
) -> tuple[Ranks | None, Figure | None]:
    """Decide whether “4 f.” is four ranks or four feet: feet where no compound is named."""
    match = find_name(text[: ranks.start].strip(MARKS))
    other = length is not None and (length.start, length.end) != (ranks.start, ranks.end)
    if other and length is not None and length.start < ranks.end and length.end > ranks.start:
        other = False
    if other or (match and match.entry.compound) or ranks.count in {3, 5, 6, 7}:
        if length and not other:
            rest = [one for one in figures_in(text) if one.start >= ranks.end]
            length = rest[0] if rest else None
        return ranks, length
    return None, length


def _length_of(text: str, pedal: bool, language: str) -> Figure | None:
    found = figures_in(text)
    sure = [one for one in found if one.sure]
    if sure or len(found) < 2:
        return next(iter(sure or found), None)
    match = find_name(text[: found[0].start].strip(MARKS), language, pedal)
    usual = [one for one in found if match and one.length in match.entry.lengths]
    return (usual or found)[0]


def _around(text: str, found: _Found) -> tuple[str, tuple[str, ...]]:
    """Give the name, which stands before the figures or between them, and what comes after it."""
    spans = found.spans()
    if not spans:
        return cleaned(text), ()
    pieces, at = [], 0
    for start, end in spans:
        pieces.append(text[at:start])
        at = max(at, end)
    pieces.append(text[at:])
    named = [cleaned(piece) for piece in pieces]
    first = next((place for place, piece in enumerate(named) if words_of(piece)), None)
    if first is None:
        return cleaned(text), ()
    after = tuple(piece for piece in named[first + 1 :] if words_of(piece))
    return named[first], after


def _is_name(name: str, match: Match | None, *, figured: bool, bare: bool) -> bool:
    spoken = words_of(name)
    if not spoken or len(spoken) > MOST_WORDS or _PROSE.search(name):
        return False
    if figured:
        return match is not None or (len(spoken) <= 4 and not words("note") & set(spoken))
    known = match is not None and (match.exact or (bare and len(spoken) <= 4))
    return known or _is_of_names(name)


def _is_of_names(name: str) -> bool:
    """Say whether every word of a name is the name of a stop: Flautado Violón."""
    found = [find_name(word) for word in name.split()]
    return len(found) == 2 and all(one is not None and one.exact for one in found)


def _kept(match: Match | None, found: _Found) -> Ranks | None:
    """Give the ranks, or None where a Roman figure only numbers stops of one name."""
    ranks = found.ranks
    if ranks is None or not ranks.roman or match is None or found.composed:
        return ranks
    counted = match.entry.compound or "undulating" in match.entry.construction
    return ranks if counted or ranks.count > 3 else None


def _settled(
    name: str, ranks: Ranks | None, found: _Found, match: Match | None, remarks: tuple[str, ...]
) -> StopLine:
    doubts: list[str] = []
    if found.ranks and ranks is None:
        figure = roman(found.ranks.count)
        name = f"{name} {figure}"
        doubts.append(f"{figure} is taken for its number, not for ranks")
    composition = found.composed.lengths if found.composed else ()
    count = len(composition) or (ranks.count if ranks else 1)
    if ranks and ranks.most > ranks.count and not composition:
        doubts.append(f"it grows from {ranks.count} to {ranks.most} ranks; {ranks.count} are kept")
    length = true_length(found.length, match, doubts)
    if found.length is None and count == 1 and not (match and match.entry.compound):
        length = usual_length(name, match, doubts)
    return StopLine(
        name, length, count, composition, remarks, match, bool(found.spans()), tuple(doubts)
    )
