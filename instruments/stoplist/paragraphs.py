"""Paragraphs: a line that holds a label and what it is of."""

import re

_LABEL = re.compile(r"([^:—]{2,70}?)\s?(:|\.?\s?—)\s*(?=\S)")


def labelled(text: str) -> tuple[str, str, str]:
    """Part a line at the colon or dash behind its first words: Great Organ.— is a label."""
    match = _LABEL.match(text)
    return (match[1].strip(" ."), match[2], text[match.end() :]) if match else ("", "", text)
