"""Spelling: a stop's name in bare letters, so that its many spellings meet.

Builders of three centuries and a dozen languages write one stop in many ways; what is folded here
is spelling alone, never meaning.
"""

import re
import unicodedata
from collections.abc import Iterable
from functools import lru_cache

_APART = re.compile(r"[^\w']+|_+")
_DOUBLE = re.compile(r"(.)\1+")
_ROMAN = re.compile(r"[ivx]+")
_NUMBER = re.compile(r"[ivx]+|\w*\d\w*")
_LETTERS = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "’": "'"})

#: Spellings that mean one sound in the names of stops, in the order they are folded: common
#: practice. Gedackt, Gedact and Gedeckt are one word.
_SPELLINGS = tuple(
    (re.compile(pattern), plain)
    for pattern, plain in (
        (r"ij|y", "i"),
        (r"sch", "sh"),
        (r"c(?=[eiy]|oe|ae)", "z"),
        (r"c(?!h)", "k"),
        (r"qv", "qu"),
        (r"kh|kk", "k"),
        (r"ph", "f"),
        (r"th", "t"),
        (r"oe", "o"),
        (r"ae", "a"),
        (r"(?<!q)ue", "u"),
        (_DOUBLE.pattern, r"\1"),
        (r"gedekt", "gedakt"),
    )
)

#: Short forms seen in stop lists, and the words they stand for: common practice.
_SHORT_FOR = {
    "diap": "diapason", "dia": "diapason", "op": "open", "stopd": "stopped", "stpd": "stopped",
    "dbl": "double", "orch": "orchestral", "lieb": "lieblich", "ged": "gedackt", "harm": "harmonic",
    "tpt": "trumpet", "prin": "principal", "princ": "principal", "mixt": "mixture",
    "12th": "twelfth", "15th": "fifteenth", "17th": "seventeenth", "19th": "nineteenth",
    "22nd": "twenty second",
}  # fmt: skip


def split_name(text: str) -> list[str]:
    """Give the words of a name in small letters without accents, numbers among them."""
    plain = unicodedata.normalize("NFKD", text).casefold().translate(_LETTERS)
    bare = "".join(letter for letter in plain if not unicodedata.combining(letter))
    words = (word.replace("'", "") for word in _APART.split(bare))
    return [word for word in words if word]


def name_words(text: str) -> list[str]:
    """Give the words of a name without its numbers, short forms such as Op. Diap. written out."""
    words: list[str] = []
    for word in split_name(text):
        if word in _SHORT_FOR:
            words += _SHORT_FOR[word].split()
        elif not _NUMBER.fullmatch(word):
            words.append(word)
    return words


@lru_cache(maxsize=8192)
def fold_word(word: str) -> str:
    """Fold one word of :func:`split_name`: plurals, double letters and variant spellings."""
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "bas")):
        word = word[:-1]
    if _ROMAN.fullmatch(word):
        return word
    for pattern, plain in _SPELLINGS:
        word = pattern.sub(plain, word)
    return word


def fold_words(words: Iterable[str]) -> str:
    """Fold words of :func:`split_name` into one, so that Sub Bass and Subbass meet."""
    folded = [fold_word(word) for word in words]
    return folded[0] if len(folded) == 1 else _DOUBLE.sub(r"\1", "".join(folded))


def fold(name: str) -> str:
    """Fold a whole name to bare letters without spaces: ``Rohr-Flöten`` and ``rohrfloten`` meet."""
    return fold_words(split_name(name))
