"""Tables: the words that lists are written with, in a dozen languages.

Division names stand in ``divisions.csv``, all other words in ``words.toml`` beside this module:
common practice, no source; the short forms of couplers as in the coupler pages of Grove and
Wikipedia.
"""

import csv
import re
import tomllib
import unicodedata
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

PEDAL_ROLE, ANY_ROLE = "pedal", "manual"
_WORD = re.compile(r"[^\W\d_]+")
_LETTERS = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "’": "'"})


@dataclass(frozen=True, slots=True)
class Home:
    """What the words of a heading stand for: the name to show, its role, its language."""

    name: str
    role: str
    language: str

    @property
    def is_pedal(self) -> bool:
        """Whether feet play it."""
        return self.role == PEDAL_ROLE


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """Give text in small letters without accents: ``Récit`` is ``recit``."""
    spread = unicodedata.normalize("NFKD", text.casefold().translate(_LETTERS))
    return "".join(letter for letter in spread if not unicodedata.combining(letter))


def words_of(text: str) -> list[str]:
    """Give the plain words of a text, without figures and marks."""
    return _WORD.findall(plain(text))


@cache
def homes() -> dict[str, tuple[Home, ...]]:
    """Give what each word or phrase may head, in the order of the table."""
    found: dict[str, tuple[Home, ...]] = {}
    with Path(__file__).with_name("divisions.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            one = Home(row["name"], row["role"], row["language"])
            for phrase in row["words"].split(";"):
                key = " ".join(words_of(phrase))
                found[key] = (*found.get(key, ()), one)
    return found


def home(phrase: str, language: str = "") -> Home | None:
    """Give what a plain phrase heads, as the language has it; None when it heads nothing."""
    those = homes().get(phrase, ())
    first = those[0] if those else None
    return next((one for one in those if one.language == language), first)


@cache
def _words() -> dict[str, Any]:
    return tomllib.loads(Path(__file__).with_name("words.toml").read_text(encoding="utf-8"))


@cache
def words(name: str) -> frozenset[str]:
    """Give the words of one table of ``words.toml``."""
    return frozenset(_words()[name].split())


@cache
def word_starts(name: str) -> re.Pattern[str]:
    """Give a pattern for the words and beginnings of words of one list of ``words.toml``."""
    starts = sorted(_words()[name], key=len, reverse=True)
    return re.compile(r"(?<![^\W\d_])(?:" + "|".join(map(re.escape, starts)) + ")")


def language_of(text: str) -> str:
    """Give the language that most words of a list are of, English where none stands out."""
    spoken = words_of(text)
    scores = {
        language: sum(word in known for word in spoken) for language, known in _languages().items()
    }
    best = max(scores, key=lambda language: scores[language])
    return best if scores[best] else "en"


@cache
def _languages() -> dict[str, frozenset[str]]:
    return {name: frozenset(those.split()) for name, those in _words()["languages"].items()}
