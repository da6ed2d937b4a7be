"""Words: how findings name stops, keyboards and keys on the screen and on paper."""

import re
from collections.abc import Container, Iterable
from fractions import Fraction

from instruments.compass import key_typeset
from instruments.organ import Coupler, Keyboard, Stop
from instruments.pitch import length_typeset
from registrations.combination import Player

#: Names that take no article: “Manual II”, “III”, “2”.
_NUMBERED = re.compile(r"(manual|keyboard|clavier|manuale?)?\s*([IVX]+|\d+)\b.*", re.IGNORECASE)

#: A sentence with more stops than this is no longer read.
_MOST_NAMED = 5

PLAYER_WORDS: dict[Player, str] = {
    Player.RIGHT: "the right hand",
    Player.LEFT: "the left hand",
    Player.FEET: "the feet",
}


def stop_words(stop: Stop) -> str:
    """Name a stop with its pitch: ``Twelfth 2⅔′``."""
    return stop.name if stop.length is None else f"{stop.name} {length_typeset(stop.length)}"


def stops_words(stops: Iterable[Stop]) -> str:
    """Name stops, each once: ``Principal 4′ and Twelfth 2⅔′``; of many the first, and how many."""
    names = list(dict.fromkeys(map(stop_words, stops)))
    if len(names) > _MOST_NAMED:
        shown = _MOST_NAMED - 1
        names[shown:] = [f"{len(names) - shown} others"]
    return listed(names)


def lengths_words(lengths: Iterable[Fraction]) -> str:
    """Name lengths: ``8′, 4′ and 2′``."""
    return listed(map(length_typeset, lengths))


def listed(words: Iterable[str]) -> str:
    """Join words as speech does: ``a, b and c``."""
    *most, last = words
    return f"{', '.join(most)} and {last}" if most else last


def brings(drawn: Iterable[Coupler], ids: Container[str]) -> str:
    """Begin a sentence about couplers, by their ids: ``Swell to Great brings``."""
    names = [one.name for one in drawn if one.id in ids]
    return f"{listed(names)} {'brings' if len(names) == 1 else 'bring'}"


def the(name: str) -> str:
    """Give a keyboard's or a division's name as it stands in a sentence: ``the Great``."""
    return name if _NUMBERED.fullmatch(name) else f"the {name}"


def on(keyboard: Keyboard, keys: tuple[int, int] | None = None) -> str:
    """Say where: ``On the Great,``, or ``On the Great, from C to b,`` if not all its keys."""
    where = f"On {the(keyboard.name)},"
    if keys is None or keys == (keyboard.compass.low, keyboard.compass.high):
        return where
    low, high = map(key_typeset, keys)
    return f"{where} at {low}," if low == high else f"{where} from {low} to {high},"


def capital(sentence: str) -> str:
    """Begin a sentence with a capital, leaving the rest as it is."""
    return sentence[0].upper() + sentence[1:]
