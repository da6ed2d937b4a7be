"""Peeling: headings, tremulants and couplers, which have no figure, off the front of a piece."""

import re

from instruments.stoplist.headings import read_heading
from instruments.stoplist.layout.pieces import (
    figure_spans,
    has_figure,
    heading_at_front,
    is_heading,
    is_known,
    is_section,
    is_stop,
    is_tremulant,
)
from instruments.stoplist.tables import home, words, words_of

_NUMERAL = re.compile(r"[IVX\d. ]+")
TO = re.compile(r"\s+(?:to|an|auf|sur|aan|op|til|till|al)\s+(?:the\s+)?", re.I)


def peeled(text: str) -> list[str]:
    """Take headings, tremulants and couplers, which have no figure, off the front of a piece."""
    found: list[str] = []
    rest = text.strip()
    while rest:
        size = _front(rest)
        if size == 0 or size >= len(rest):
            break
        found.append(rest[:size].strip())
        rest = rest[size:].strip(" ,;")
    return [*found, rest] if rest else found


def _front(text: str) -> int:
    """Give the length of what can be taken off the front of a piece, 0 where nothing can."""
    starts = list(re.finditer(r"\S+", text))
    if len(starts) < 2:
        return 0
    first = starts[0][0].strip(":")
    coupler = _coupler(text)
    if coupler:
        return coupler
    section = is_section(first) and not words("pedal_coupling").issuperset(words_of(first))
    if (is_tremulant(first) or section or _is_title(first)) and not is_known(text):
        return starts[0].end()
    size = heading_at_front([one[0].strip(".:") for one in starts])
    end = starts[size - 1].end() if size else 0
    return end if size and end < len(text) and _heads(text[:end], text[end:]) else 0


def _is_title(word: str) -> bool:
    return len(word) > 6 and words("subheadings").issuperset(words_of(word)) and not is_known(word)


def _heads(front: str, rest: str) -> bool:
    heading = read_heading(front.strip(" .:"))
    if heading is None or TO.match(rest + " ") or _NUMERAL.fullmatch(front):
        return False
    if not rest.strip()[:1].isalpha() and not is_stop(rest):
        return False
    if is_known(front) and not (front.isupper() and not rest.isupper()):
        return False
    named = words_of(front)
    if len(named) == 1 and is_known(f"{front} {words_of(rest)[0] if words_of(rest) else ''}"):
        return front.isupper() and not rest.isupper()
    if len(named) == 1 and not front.isupper() and len(figure_spans(rest)) < 2:
        return False
    return is_stop(rest.strip()) or is_heading(rest.strip()) or has_figure(rest)


def _coupler(text: str) -> int:
    """Give the length of ``Swell to Great`` at the front of a text, 0 where there is none."""
    to = TO.search(text)
    if to is None or home(" ".join(words_of(text[: to.start()]))) is None:
        return 0
    target = re.match(
        r"[^\W\d_]+(?:\s+[IVX]+\b)?(?:\s+(?:16|8|4)['’′]?(?=\s|$|,))*", text[to.end() :]
    )
    if target is None or home(" ".join(words_of(target[0]))) is None:
        return 0
    rest = text[to.end() + target.end() :].strip(" ,;")
    follows = TO.search(rest) or is_stop(rest) or is_heading(rest) or is_tremulant(rest)
    return to.end() + target.end() if follows else 0
