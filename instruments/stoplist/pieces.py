"""Pieces: one line parted into what may each be a stop, a coupler or a heading."""

import itertools
import re
from dataclasses import dataclass
from functools import lru_cache

from instruments.lexicon import find_name
from instruments.stoplist.couplerline import read_couplers
from instruments.stoplist.headings import read_heading
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.ranks import composition_in, ranks_in
from instruments.stoplist.stopline import read_stop
from instruments.stoplist.tables import words, words_of

LONGEST = 20_000
_CELL = re.compile(r"[^\t|]+?(?=\t| {0,9}\||\s{2}|$)")
#: In lists that write the figure first, a comma before a figure parts two stops.
_PARTED_LEADING = re.compile(r"[;•·]\s*|,\s+(?![^()]*\))")
_PARTED = re.compile(
    r"[;•·]\s*(?![^()\[\]]*[)\]])|,\s+(?![^()]*\))(?!\d{1,2}(?:[,.\s]|$))(?![Nn][or]\.?\s?\d)|\s/\s(?=[^\W\d])"
)
_NUMBERING = re.compile(
    r"^\s*(?:\(?\d{1,3}[.):]\)?\s*|[a-zA-Z]\)\s+|[ivx]{1,5}[.)]\s+|[ivx]{1,4}\s+(?=[A-ZÀ-Þ])|[-–—•*·○●▪►>]+\s+)(?=\S)"
)
_COUNT = re.compile(r"\s*(\d{1,3})[.)]?\s+(?=[^\W\d])")
_NEXT_NUMBER = re.compile(r"(?<=\S)\s+(?=\d{1,3}[.)]\s+[^\W\d])")
_BARE = re.compile(r"^\s*\d{1,3}\s+(?=[^\W\d])")
_NUMBERED = re.compile(r"\d{1,3}[.)]\s+[^\W\d]")
_ONLY_NUMBER = re.compile(r"\s*\d{1,3}\s*[.)]?\s*")


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a line and the column at which it begins."""

    text: str
    column: int
    told: str = ""


def cells_of(line: str) -> list[Piece]:
    """Part a line at tabs, bars and wide gaps."""
    spread = line.expandtabs(8) if "\t" not in line.strip() else line
    found = [Piece(match[0].strip(), match.start()) for match in _CELL.finditer(spread)]
    return [one for one in found if one.text]


@lru_cache(maxsize=2048)
def pieces_of(line: str, *, numbered: bool = False) -> tuple[Piece, ...]:
    """Part a line into pieces that are each whole: a name with its figures and remarks."""
    if len(line) > LONGEST:
        return (Piece(line.strip(), 0),)
    counted = _COUNT.match(line) if numbered else None
    if counted:
        line = " " * counted.end() + line[counted.end() :]
    found: list[Piece] = []
    for group in _grouped(cells_of(line), numbered):
        found += [Piece(text, group.column) for text in _parted(group.text)]
    if counted and found:
        found[0] = Piece(found[0].text, found[0].column, counted[1])
    return tuple(found)


def unnumbered(text: str, *, numbered: bool) -> str:
    """Give a piece without the number that counts it in the list."""
    bare = _NUMBERING.sub("", text, count=1)
    if bare == text and _BARE.match(text):
        rest = _BARE.sub("", text, count=1)
        if numbered or any(one.sure for one in figures_in(rest)) or _figured(rest):
            return rest
    return bare if words_of(bare) else text


def _figured(text: str) -> bool:
    return bool(figures_in(text)) and read_stop(text, pedal=False) is not None


def _grouped(cells: list[Piece], numbered: bool) -> list[Piece]:
    """Join cells that tell of one stop: its number, name, length, ranks, pipes."""
    if (
        len(cells) > 2
        and _ONLY_NUMBER.fullmatch(cells[0].text)
        and words_of(cells[1].text)
        and (numbered or any(figures_in(cell.text) for cell in cells[2:]))
    ):
        cells = cells[1:]
    groups: list[list[Piece]] = []
    first = bool(cells) and is_figure(cells[0].text)
    for cell in cells:
        if not groups or _begins(cell, groups[-1], first):
            groups.append([cell])
        else:
            groups[-1].append(cell)
    return [Piece("  ".join(one.text for one in group), group[0].column) for group in groups]


def _begins(cell: Piece, group: list[Piece], figure_first: bool) -> bool:
    spoken = any(words_of(one.text) and not is_figure(one.text) for one in group)
    if figure_first:
        return is_figure(cell.text) and spoken
    return spoken and _names_a_stop(cell.text)


def is_figure(text: str) -> bool:
    """Say whether a text is figures of a stop and nothing else."""
    rest = text
    for one in reversed(figures_in(text)):
        rest = rest[: one.start] + rest[one.end :]
    for many in reversed(ranks_in(rest)):
        rest = rest[: many.start] + rest[many.end :]
    return rest != text and not words_of(rest)


def _names_a_stop(text: str) -> bool:
    if not words_of(text) or text[0] in "([*":
        return False
    name = re.sub(r"^\s*\d{1,3}[.)]\s*", "", text)
    cut = min([one.start for one in figures_in(name) if one.start] + [len(name)])
    if cut == len(name) and words("remark").issuperset(words_of(name)):
        return False
    match = find_name(name[:cut].strip())
    return match is not None and (match.exact or cut < len(name)) and read_heading(text) is None


def _parted(text: str) -> list[str]:
    """Part a paragraph at its commas, or a flattened row behind its figures."""
    if len(text) < 12:
        return [text]
    if _NUMBERED.match(text):
        return [part.strip(" ,;") for part in _NEXT_NUMBER.split(text)]
    parted = _PARTED_LEADING if text[:1].isdigit() else _PARTED
    parts = [part.strip() for part in parted.split(text) if part.strip(" .")]
    if len(parts) > 1 and sum(_is_whole(part) for part in parts) > 1:
        return [piece for part in parts for piece in _behind_figures(part)]
    return _behind_figures(text)


def _is_whole(text: str) -> bool:
    bare = unnumbered(text, numbered=False)
    return bool(read_couplers(bare)) or read_stop(bare, pedal=False) is not None


def _behind_figures(text: str) -> list[str]:
    """Cut where a known name follows the figures of another: Bourdon 16 Oboe 8."""
    spans = [(one.start, one.end) for one in figures_in(text)]
    spans += [(one.start, one.end) for one in ranks_in(text) if one.start]
    composed = composition_in(text)
    if composed:
        spans = [one for one in spans if one[1] <= composed.start or one[0] >= composed.end]
        spans.append((composed.start, composed.end))
    spans.sort()
    leading = bool(spans) and not words_of(text[: spans[0][0]])
    cuts = _leading_cuts(text, spans) if leading else _trailing_cuts(text, spans)
    edges = [0, *cuts, len(text)]
    return [text[start:end].strip(" ,;") for start, end in itertools.pairwise(edges)]


def _trailing_cuts(text: str, spans: list[tuple[int, int]]) -> list[int]:
    cuts = []
    for (_, end), after in zip(spans, [*spans[1:], (len(text), len(text))], strict=False):
        between = text[end : after[0]]
        closing = re.match(r"[\s,.;]*(?:\([^()]*\)[\s,.;]*)*", between)
        start = end + (closing.end() if closing else 0)
        name = re.sub(r"^\d{1,3}[.)]\s*", "", text[start : after[1]]).strip()
        if name[:1].isupper() and _names_a_stop(name):
            cuts.append(start)
    return cuts


def _leading_cuts(text: str, spans: list[tuple[int, int]]) -> list[int]:
    """Cut before each figure that a name stands on both sides of."""
    cuts = []
    for at, ((_, end), (start, stop)) in enumerate(itertools.pairwise(spans)):
        after = spans[at + 2][0] if at + 2 < len(spans) else len(text)
        if _names_a_stop(text[end:start].strip()) and _names_a_stop(text[stop:after].strip()):
            cuts.append(start)
    return cuts
