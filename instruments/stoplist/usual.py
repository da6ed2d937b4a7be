"""Usual: the length that a stop's figure means, or that its name means without one."""

import re
from fractions import Fraction

from instruments.lexicon import Match, find_name
from instruments.pitch import ROUNDED_LABELS, length_typeset
from instruments.stoplist.lengths import Figure
from instruments.tone import Family


def true_length(figure: Figure | None, match: Match | None, doubts: list[str]) -> Fraction | None:
    """Give the length of a figure, a rounded label mended with a doubt: 3 is 2 2/3."""
    if figure is None:
        return None
    true = ROUNDED_LABELS.get(figure.length)
    if true is None or (match and figure.length in match.entry.lengths):
        return figure.length
    doubts.append(f"{length_typeset(figure.length)} is a rounded label for {length_typeset(true)}")
    return true


def _counted_in(name: str) -> Match | None:
    """Find the pitch that an Italian name counts from its unison: Flauto in ottava."""
    counted = re.search(r"\bin\s+(\w+)$", name)
    return find_name(counted[1]) if counted else None


def usual_length(name: str, match: Match | None, doubts: list[str]) -> Fraction | None:
    """Give the length that a name alone most often has, with a doubt; bells have none."""
    match = _counted_in(name) or match
    if match is None or not match.entry.lengths or match.entry.family is Family.PERCUSSION:
        return None
    usual = match.entry.lengths[0]
    doubts.append(f"no length is written; {match.entry.name} is most often {length_typeset(usual)}")
    return usual
