"""Pieces: what a line of a list is cut into, and how a piece is told from another."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from instruments.lexicon import find_name
from instruments.stoplist.couplerline import read_couplers
from instruments.stoplist.headings import read_heading
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.ranks import composition_in, ranks_in
from instruments.stoplist.tables import ANY_ROLE, home, words, words_of

_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_ORDER = re.compile(r"\b(?:no|nr|n[°º]|№)\.?\s?\d{1,2}\b", re.IGNORECASE)
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?|\b[A-G]{1,3}#?\b")
_PLACED = re.compile(r"^\W*(?:\d{1,3}|[a-z]{1,4})[.)]\s+")
_COUNTED = re.compile(
    r"\b\d{1,4}\s?(?:pipes?|notes?|pfeifen|pijpen|tuyaux|canne|tubos|pipor|piber|tubes?|bells?|bars?|"
    r"tones?|chimes?|mm|cm|inch(?:es)?)\b",
    re.I,
)


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing of a list: a heading, a stop, a coupler; ``line`` is 0 where no line says it.

    ``doubt`` is a guess that was made to place it, ``gap`` whether a blank line stands before it.
    """

    line: int
    text: str
    doubt: str = ""
    gap: bool = False


_JOINERS = frozenset("&/+")
#: Longer text is nothing that can be told apart.
LONGEST = 12_000


@lru_cache(maxsize=8192)
def figure_spans(text: str) -> tuple[tuple[int, int], ...]:
    """Give where lengths, ranks and compositions stand in a text.

    What stands in brackets, the number of a stop and counts of pipes are not looked at.
    """
    masked = text
    for pattern in (_BRACKETS, _COUNTED, _PLACED):
        masked = pattern.sub(lambda match: " " * len(match[0]), masked)
    composed = composition_in(masked)
    spans = [(one.start, one.end) for one in figures_in(masked)]
    spans += [(one.start, one.end) for one in ranks_in(masked)]
    if composed:
        spans.append((composed.start, composed.end))
    merged: list[tuple[int, int]] = []
    for start, end in sorted(spans):
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(end, merged[-1][1]))
        else:
            merged.append((start, end))
    return tuple(merged)


@lru_cache(maxsize=4096)
def is_loose(text: str) -> bool:
    """Tell whether a piece is figures, remarks or marks alone, and names nothing."""
    if len(text) > LONGEST:
        return False
    bare = _ORDER.sub(" ", _COUNTED.sub(" ", _BRACKETS.sub(" ", text)))
    for start, end in reversed(figure_spans(bare)):
        bare = bare[:start] + " " + bare[end:]
    spoken = words_of(_NUMBER.sub(" ", bare))
    loose = words("remark") | words("bass") | words("treble")
    return loose.issuperset(spoken) and not (spoken and is_known(" ".join(spoken)))


@lru_cache(maxsize=4096)
def has_figure(text: str) -> bool:
    """Tell whether a piece has a length, ranks or a composition beside its name."""
    return len(text) <= LONGEST and bool(figure_spans(text))


@lru_cache(maxsize=4096)
def is_known(text: str) -> bool:
    """Tell whether a piece is the name of a stop as the lexicon has it."""
    match = find_name(_PLACED.sub("", text).strip(" .,;:*-–"))
    return match is not None and match.exact


@lru_cache(maxsize=4096)
def is_heading(text: str) -> bool:
    """Tell whether a piece heads a division."""
    return read_heading(text.strip(" .:-–—")) is not None


@lru_cache(maxsize=4096)
def is_stop(text: str) -> bool:
    """Tell whether a piece looks like a stop: a name with a figure, or a known name."""
    if is_loose(text) or is_heading(text) or is_tremulant(text):
        return False
    return is_known(text) or (has_figure(text) and not is_coupler(text))


def names_division(token: str) -> bool:
    """Tell whether a word names a division, and is not only a number or a word beside one."""
    heading = read_heading(token)
    return heading is not None and heading.home.role != ANY_ROLE and not heading.number


def heading_at_front(tokens: Sequence[str]) -> int:
    """Give how many words from the front are one heading, 0 where they are none."""
    sizes = [at for at in (3, 2, 1) if is_heading(" ".join(tokens[:at]))]
    phrases = [at for at in sizes if home(" ".join(words_of(" ".join(tokens[:at]))))]
    size = (phrases or sizes[::-1] or [0])[0]
    while 0 < size < len(tokens):
        if names_division(tokens[size]) or not is_heading(" ".join(tokens[: size + 1])):
            break
        size += 1
    return min(size, len(tokens))


def headings_in(text: str) -> list[str]:
    """Give the headings that follow one another, ``GREAT SWELL PEDAL``, if nothing else is there.

    The heading of the couplers may be one of them.
    """
    tokens = text.split()
    if len(tokens) < 2 or len(tokens) > 16 or _JOINERS & set(text) or "to" in words_of(text):
        return []
    found: list[str] = []
    while tokens:
        size = heading_at_front(tokens) or int(bool(found) and is_section(tokens[0]))
        if size == 0:
            return []
        found.append(" ".join(tokens[:size]))
        tokens = tokens[size:]
    return found if _are_several(found) else []


def _are_several(headings: Sequence[str]) -> bool:
    """Tell whether headings name divisions, each its own: Swell (Manual III) is only one."""
    closed = all(text.count("(") == text.count(")") and text[0] != "(" for text in headings)
    named = [one for text in headings if (one := read_heading(text)) and one.home.role != ANY_ROLE]
    return closed and (len(named) > 1 or any(map(is_section, headings)))


def is_tremulant(text: str) -> bool:
    """Tell whether a piece names a tremulant first."""
    spoken = words_of(text)
    return bool(spoken) and spoken[0] in words("tremulants")


@lru_cache(maxsize=4096)
def is_coupler(text: str) -> bool:
    """Tell whether a piece couples one division to another, or a division to itself."""
    return bool(read_couplers(text, among_couplers=True)) and not is_known(text)


def is_half(text: str) -> bool:
    """Tell whether a piece heads the bass or the treble stops: Mano izquierda."""
    spoken = words_of(text)
    halves = words("bass_heading") | words("treble_heading")
    return bool(spoken) and halves.issuperset(spoken) and not is_stop(text)


def is_section(text: str) -> bool:
    """Tell whether a piece heads the couplers or accessories."""
    spoken = words_of(text)
    return (
        bool(spoken)
        and words("coupler_headings").issuperset(spoken)
        and any(len(word) > 4 for word in spoken)
        and not is_heading(text)
        and not has_figure(text)
        and not is_known(text)
    )
