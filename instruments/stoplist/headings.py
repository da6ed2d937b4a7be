"""Headings: what a line that begins a division says of it."""

import re
from dataclasses import dataclass, replace
from functools import lru_cache

from instruments.compass import Compass
from instruments.stoplist.compasses import compass_in, without_compass
from instruments.stoplist.ranks import roman_value
from instruments.stoplist.tables import ANY_ROLE, Home, home, plain, words, words_of

_NUMBER = re.compile(
    r"(?<![\w'’])(?P<roman>I{1,3}|IV|VI?)(?![\w'’])"
    r"|(?<![\w.,/])(?P<figure>[1-6])(?:(?:st|nd|rd|th|er|[eè]me|ere|de|[eè])\b|(?=[.)ºª°]|\s|$))"
)
_COUNT = re.compile(
    r"\b\d{1,3}\s?(?:stops?|ranks?|registers?|stemmen|jeux|registri|registros|"
    r"stämmor|stemmer|pipes|speaking stops)\b",
    re.I,
)
_WIND = re.compile(
    r"[,;(–-]?\s*\b\d{1,3}(?:[.,]\d+|\s?[½¼¾]|[ -]\d/\d)?[\"”″]?\s?"
    r"(?:mm|cm|inch(?:es)?|in\.|\")[^)]*",
    re.I,
)
_ORDINALS = {
    **dict.fromkeys(("first", "erstes", "premier", "primo", "primer", "primera", "eerste"), 1),
    **dict.fromkeys(("second", "zweites", "deuxieme", "secondo", "segundo", "segunda"), 2),
    **dict.fromkeys(("third", "drittes", "troisieme", "terzo", "tercer", "tercera", "derde"), 3),
    **dict.fromkeys(("fourth", "viertes", "quatrieme", "quarto", "vierde"), 4),
    **dict.fromkeys(("fifth", "funftes", "cinquieme", "quinto"), 5),
}  # fmt: skip
_BRACKETED = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_WINDS = frozenset({"wind", "winddruck", "winddrücke", "winddruk", "pression", "pressure"})
MOST_WORDS = 12
_NAME = re.compile(r"[^\W\d_]+")
#: Two short forms with a stroke between them couple: I/P, II/Ped., HW/P.
_COUPLED = re.compile(r"[^\W\d_]{1,3}\.?\s?/\s?[^\W\d_]{1,3}\.?")


@dataclass(frozen=True, slots=True)
class Heading:
    """A division as its heading tells it; ``number`` is that of its manual, 0 where none is."""

    home: Home
    number: int
    enclosed: bool
    floating: bool
    compass: Compass | None


@lru_cache(maxsize=2048)
def read_heading(text: str, language: str = "") -> Heading | None:
    """Read a line as the heading of a division, or None when it is not one."""
    if len(text) > 120 or not words_of(text) or _COUPLED.fullmatch(text.strip()):
        return None
    found = compass_in(text)
    plain_text = _BRACKETED.sub(_known_inside, text)
    bare = _WIND.sub(" ", _COUNT.sub(" ", without_compass(plain_text)))
    number, bare = _number(bare)
    spoken = words_of(bare)
    if len(spoken) > MOST_WORDS or re.search(r"\d", bare) or not spoken:
        return None
    if spoken and spoken[0] in _WINDS:
        return None
    division = _division(spoken, number, language, joined=bool(re.search(r"[/+–-]", bare)))
    if division is None:
        return None
    known = set(words_of(text))
    boxed = division.role == "swell" or bool(words("enclosed") & known)
    return Heading(
        _as_written(division, text),
        number,
        boxed and not words("unenclosed") & known,
        bool(words("floating") & known),
        found[0] if found else None,
    )


def _known_inside(match: re.Match[str]) -> str:
    """Leave brackets out of a heading where they say what no heading says: except Tuba."""
    spoken = words_of(match[0])
    known = all(word in _others() or home(word) for word in spoken)
    return match[0] if known else " "


def _as_written(division: Home, text: str) -> Home:
    """Give a division with its name as the list spells it; capitals have lost their accents."""
    for word in _NAME.findall(text):
        if plain(word) == plain(division.name) and not word.isupper():
            return replace(division, name=word[0].upper() + word[1:])
    return division


def _number(text: str) -> tuple[int, str]:
    match = _NUMBER.search(text)
    if match:
        number = roman_value(match["roman"]) if match["roman"] else int(match["figure"])
        return number, _NUMBER.sub(" ", text)
    spoken = next((word for word in words_of(text) if word in _ORDINALS), "")
    return _ORDINALS.get(spoken, 0), text


def _division(spoken: list[str], number: int, language: str, *, joined: bool) -> Home | None:
    """Give the division that the words name, where every other word is of a heading."""
    found: list[Home] = []
    at = 0
    while at < len(spoken):
        size, one = _longest(spoken[at:], language)
        if one is None and spoken[at] not in _others():
            return None
        if one is not None:
            found.append(one)
        at += max(size, 1)
    named = [one for one in found if one.role != ANY_ROLE]
    if joined and len({one.role for one in named}) > 1:
        return None
    if named:
        return _preferred(named)
    return found[0] if found else (Home("Manual", ANY_ROLE, "") if number else None)


def _preferred(named: list[Home]) -> Home:
    if len(named) > 1 and named[0].is_pedal != named[-1].is_pedal:
        return next(one for one in named if one.is_pedal)
    return named[0]


def _longest(spoken: list[str], language: str) -> tuple[int, Home | None]:
    for size in (3, 2, 1):
        if size <= len(spoken):
            one = home(" ".join(spoken[:size]), language)
            if one is not None and (size > 1 or len(spoken[0]) > 1 or len(spoken) == 1):
                return size, one
    return 0, None


def _others() -> frozenset[str]:
    return (
        words("heading")
        | words("enclosed")
        | words("unenclosed")
        | words("floating")
        | frozenset(_ORDINALS)
    )
