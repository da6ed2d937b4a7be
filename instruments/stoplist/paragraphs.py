"""Paragraphs: a line that holds a heading and what stands under it, or a whole list."""

import re

from instruments.stoplist.compasses import is_compass
from instruments.stoplist.headings import read_heading
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.ranks import ranks_in

_LABEL = re.compile(r"([^:—]{2,70}?)\s?(:|\.?\s?—)\s*(?=\S)")
_TITLED = re.compile(
    r"(?P<title>\S+ (?:Organ|Division|ORGAN)|Couplers|COUPLERS|Koppeln)\s+(?P<rest>[^\W\d].{12,})"
)


def labelled(text: str) -> tuple[str, str, str]:
    """Part a line at the colon or dash behind its first words: Great Organ.— is a label."""
    match = _LABEL.match(text)
    return (match[1].strip(" ."), match[2], text[match.end() :]) if match else ("", "", text)


def heading_lead(line: str, language: str) -> tuple[str, str]:
    """Part the heading of a paragraph from its stops; no heading where it has none."""
    if read_heading(line, language):
        return "", line
    label, sign, rest = labelled(line)
    if sign and read_heading(label, language) and not is_compass(rest):
        return label, rest
    titled = _TITLED.match(line)
    if titled and _rest_is_stops(titled["rest"]) and read_heading(titled["title"], language):
        return titled["title"], titled["rest"]
    label, sign, rest = line.partition(". ")
    if sign and rest.count(",") > 1 and read_heading(label, language):
        return label, rest
    return "", line


def _rest_is_stops(text: str) -> bool:
    """Say whether a text has the figures of at least two stops."""
    return len(figures_in(text)) + len(ranks_in(text)) > 1
