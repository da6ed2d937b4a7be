"""Runon: several stops in one line, cut apart."""

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise, zip_longest

from instruments.stoplist.couplerline import are_couplers
from instruments.stoplist.headings import read_heading
from instruments.stoplist.layout.peeling import TO, peeled
from instruments.stoplist.layout.pieces import (
    LONGEST,
    figure_spans,
    headings_in,
    is_coupler,
    is_half,
    is_heading,
    is_loose,
    is_section,
    is_stop,
    is_tremulant,
)
from instruments.stoplist.tables import words_of

_SEPARATORS = (
    re.compile(r";"),
    re.compile(r"\s?[•·●▪■◦►]\s?"),
    re.compile(r",(?![^()]*\))(?!\d)"),
    re.compile(r"\s[-–—]\s"),
    re.compile(r"\s/\s"),
    re.compile(r"(?:(?<=[^\W\d]{4})|(?<=['’′]))\.\s+(?=[^\W\d])"),
)
_SENTENCE = re.compile(r"(?<=\w)\.\s+(?=[^\W\d]{4})")
_AND = re.compile(r"^(?:and|und|et|en|y|e|og|och)\s+(?:a\s+|an\s+)?(?=\S)", re.I)
_MARK = re.compile(r"\s?[:—]\s*|\.\s?[-–]\s?|\s[–-]\s")
_HEADED = re.compile(r"(?:[^\W_]|[.()'’ -]|\d)+$")
_BOUND = re.compile(r"[.;,)\]'’′\d]|^")
_NUMBERING = re.compile(r"(?:^|(?<=\s))(?P<number>\d{1,3})(?P<mark>[.)]?)\s+(?=[^\W\d_])")
_AFTER = re.compile(r"(?:\s*(?:\([^()]*\)|\[[^\[\]]*\]|[*†‡@#]+|pipes|notes|ranks|\d{2,4}(?=\s)))*")
_PLACED = re.compile(r"^\W*\d{1,3}[.)]\s+(?=[^\W\d_])")
SHORTEST = 12
MOST_HEADING_WORDS, LONGEST_HEADING = 12, 100


def split_line(text: str) -> list[str]:
    """Cut a line into its headings, stops and the rest; a line of one thing comes back whole."""
    if not SHORTEST <= len(text) <= LONGEST or _is_whole(text):
        return [text]
    if is_heading(text):
        return headings_in(text) or [text]
    placed = _PLACED.match(text)
    if placed and len(_NUMBERING.findall(text)) == 1:
        first, *others = split_line(text[placed.end() :])
        return [placed[0] + first, *others]
    found: list[str] = []
    for heading, rest in _chunks(text):
        if heading and is_section(heading):
            first, *others = _SENTENCE.split(rest.strip())
            found.extend([f"{heading}: {first}", *others])
            continue
        if heading:
            found.append(heading)
        if rest.strip(" .,;"):
            found.extend(_parts(rest.strip(" .,;")))
    return found if len(found) > 1 and all(map(_is_closed, found)) else [text]


def _is_whole(text: str) -> bool:
    """Say whether a line is of one thing: couplers, or a tremulant and whose it is."""
    _, _, rest = text.partition(" ")
    shaken = is_tremulant(text) and not figure_spans(text) and read_heading(rest) is None
    return shaken or is_coupler(text) or are_couplers(text)


def _is_closed(text: str) -> bool:
    """Say whether every bracket that opens in a text closes in it."""
    return text.count("(") == text.count(")") and text.count("[") == text.count("]")


def _chunks(text: str) -> Iterator[tuple[str, str]]:
    """Give each heading that a mark follows in the line, and the text up to the next."""
    heading, start = "", 0
    marks = list(_MARK.finditer(text))
    for mark, following in zip_longest(marks, marks[1:]):
        at = _heading_before(text[start : mark.start()])
        longer = text[start + (at or 0) : following.start() if following else len(text)]
        if at is None or is_heading(longer):
            continue
        if text[start : start + at].strip(" .,;") or heading:
            yield heading, text[start : start + at]
        heading = text[start + at : mark.start()].strip(" .,;")
        start = mark.end()
    yield heading, text[start:]


def _heading_before(text: str) -> int | None:
    """Give where a heading that ends the text begins, the longest there is."""
    window = max(0, len(text) - LONGEST_HEADING)
    starts = [window + match.start() for match in re.finditer(r"\S+", text[window:])]
    for start in starts[-MOST_HEADING_WORDS:]:
        before = text[:start].rstrip()
        headed = text[start:].strip(" .")
        if before and not _BOUND.search(before[-1]):
            continue
        if headed and (is_heading(headed) or is_section(headed) or is_half(headed)):
            return start
    return None


def _parts(text: str, separators: Sequence[re.Pattern[str]] = _SEPARATORS) -> list[str]:
    for at, separator in enumerate(separators):
        pieces = _joined(text, separator)
        if len(pieces) > 1 and sum(map(is_stop, pieces)) > 1:
            rest = separators[at + 1 :]
            return [part for piece in pieces for part in _parts(piece, rest)]
    return split_stops(text)


def _joined(text: str, separator: re.Pattern[str]) -> list[str]:
    """Part a text, but leave figures and remarks with the name before them."""
    pieces: list[str] = []
    start = 0
    for match in (*separator.finditer(text), None):
        piece = text[start : match.start() if match else len(text)]
        if pieces and (is_loose(piece) or is_loose(pieces[-1])):
            pieces[-1] += f", {piece.strip()}" if separator is _SEPARATORS[2] else f" {piece}"
        elif piece.strip(" .,;"):
            pieces.append(
                _AND.sub("", piece.strip(" .,"), count=1) if pieces else piece.strip(" .,")
            )
        start = match.end() if match else len(text)
    return pieces


def split_stops(text: str) -> list[str]:
    """Cut a text after each figure that a name follows, or before it where figures come first."""
    numbered = _numbered(text)
    if numbered:
        return [part for piece in numbered for part in peeled(piece)]
    spans = figure_spans(text)
    if len(spans) < 2:
        return peeled(text) if spans or TO.search(text) else [text]
    edges = [0, *(at for span in spans for at in span), len(text)]
    named = [text[at:end] for at, end in zip(edges[::2], edges[1::2], strict=True)]
    if sum(not is_loose(name) for name in named) < 2:
        return [text]
    cuts = list(_cuts(text, spans))
    ends = [*cuts, len(text)]
    pieces = [text[at:end].strip(" ,;") for at, end in zip([0, *cuts], ends, strict=True)]
    if not any(map(is_stop, pieces)):
        return peeled(text)
    if len(pieces) < 3:
        return [piece for piece in pieces if piece]
    return [part for piece in pieces if piece for part in peeled(piece)]


def _cuts(text: str, spans: Sequence[tuple[int, int]]) -> Iterator[int]:
    leading = not words_of(text[: spans[0][0]]) and bool(words_of(text[spans[-1][1] :]))
    leading = leading and not is_loose(text[spans[-1][1] :])
    for (_, end), (start, _) in pairwise(spans):
        if is_loose(text[end:start]):
            continue
        yield start if leading else end + _bracketed(text[end:start])
    if not leading and not is_loose(text[spans[-1][1] :]):
        yield spans[-1][1] + _bracketed(text[spans[-1][1] :])


def _bracketed(text: str) -> int:
    """Give how far remarks in brackets, or marks of a footnote, follow a figure."""
    match = _AFTER.match(text)
    return match.end() if match else 0


def _numbered(text: str) -> list[str]:
    """Cut a text before numbers that count its stops, 1. ... 2. ... 3. ..., if they do."""
    starts: list[int] = []
    wanted, marks = None, 0
    for match in _NUMBERING.finditer(text):
        number = int(match["number"])
        if wanted is None and match.start() > 0:
            return []
        if wanted is None or number == wanted:
            starts.append(match.start())
            marks += bool(match["mark"])
            wanted = number + 1
    if len(starts) < (2 if marks > 1 else 3):
        return []
    ends = [*starts[1:], len(text)]
    return [text[at:end].strip(" ,;") for at, end in zip(starts, ends, strict=True)]
