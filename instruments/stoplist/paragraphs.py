"""Paragraphs: a line that holds a heading and what stands under it."""

import re

from instruments.stoplist.compasses import is_compass
from instruments.stoplist.headings import read_heading

_LABEL = re.compile(r"([^:—]{2,70}?)\s?(:|\.?\s?—)\s*(?=\S)")


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
    return "", line
