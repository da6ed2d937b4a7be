"""Names: the words of a stop's name, without the marks, halves and counts around them."""

import re

from instruments.figures import roman
from instruments.lexicon import Match, find_name
from instruments.stoplist.ranks import ranks_in
from instruments.stoplist.tables import words, words_of

#: Marks that stand around names and say nothing of the stop.
MARKS = " \t.,;:-–—…·_=*†‡§|/"
#: How many letters of a word stand before an ending that means a stop, and how many it has.
_LEAST_BEFORE, _LEAST_END = 2, 4
_HALVED = re.compile(
    r"^(?P<name>.*\w{3,}.*)\s(?P<half>[Bb]/[DdSs]|[DB]|[Dd]isc\.?|TC|[Tt]en\.? ?C"
    r"|(?:ab|from|vanaf|dès|desde|dal?|fra|från) [A-Ga-g][#b]?[0-4]?['’′]{0,3})$"
)
#: A count of pipes that a table leaves behind a name.
_PIPES = re.compile(r"(?<=\w)\s+[1-9]\d{2}$")
_LOOSE = re.compile(r"\s+(?:de|di|da|of|á|à)$|^f$", re.I)
_ORDINAL_NAMES = {"decima": 10, "decimo": 10, "vigesima": 20, "trigesima": 30}


def name_match(name: str, language: str, *, pedal: bool) -> Match | None:
    """Find what a name means; of a name not in the lexicon, what its last word ends with means.

    A Spidsgamba is taken for a Gamba, which is no exact match.
    """
    if not name:
        return None
    match = find_name(spelt(name), language, pedal)
    if match is not None or not words_of(name):
        return match
    last = name.split()[-1]
    for start in range(_LEAST_BEFORE, len(last) - _LEAST_END + 1):
        ending = find_name(last[start:], language, pedal)
        if ending is not None and ending.exact:
            return Match(ending.entry, exact=False)
    return None


def spelt(name: str) -> str:
    """Write an Italian count such as Vigesima II as the number it is."""
    parts = name.lower().split()
    if len(parts) == 2 and parts[0] in _ORDINAL_NAMES and ranks_in(name.upper()):
        return roman(_ORDINAL_NAMES[parts[0]] + ranks_in(parts[1].upper())[0].count)
    return name


def without_half(name: str, after: tuple[str, ...]) -> tuple[str, tuple[str, ...]]:
    """Part the word of a half from a name: Voce umana soprani."""
    lettered = _HALVED.match(name)
    if lettered:
        half = {"D": "discant", "B": "bass"}.get(lettered["half"], lettered["half"])
        return cleaned(lettered["name"]), (half, *after)
    head, _, last = name.rpartition(" ")
    spoken = words_of(last)
    parts = bool(spoken) and (
        spoken[-1] in words("half") or (spoken[-1] in words("bass") and _is_compound(head))
    )
    if head and len(last) > 2 and parts:
        return cleaned(head), (last, *after)
    return name, after


def _is_compound(name: str) -> bool:
    match = find_name(name)
    return match is not None and match.entry.compound


def cleaned(text: str) -> str:
    """Give a name without marks, leaders and words that lead to a figure: Flautado de."""
    text = re.sub(r"\s+", " ", re.sub(r"[.…·_]{2,}|(?:\s[.·]){2,}", " ", text))
    text = _PIPES.sub("", text)
    return _LOOSE.sub("", text.strip(MARKS + "'’′\"")).strip(MARKS)
