"""The lexicon: what a stop's name says about its tone, its pipes and its usual length.

The names stand in ``lexicon.csv`` beside this module, each with its source.
"""

import csv
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, lru_cache
from pathlib import Path

from rapidfuzz import process
from rapidfuzz.distance import OSA

from instruments.pitch import parse_length
from instruments.spelling import fold, fold_word, fold_words, name_words, split_name
from instruments.tone import Construction, Family

#: A name is never longer than this; longer text is a sentence.
LONGEST_NAME = 80

#: The order in which languages are asked when the list's own is not known.
LANGUAGES = ("en", "de", "fr", "nl", "it", "es", "sv", "da", "no", "pt", "pl", "cs")

#: Languages whose qualifying words follow the name ("Trompette militaire").
_NAME_FIRST = frozenset({"fr", "it", "es", "pt"})

#: Words that say where, how loud or which one, and leave the stop what it is: common practice.
_QUALIFIERS = frozenset({
    "large", "small", "grand", "grande", "great", "gross", "grosse", "groot", "klein", "kleine",
    "petit", "petite", "big", "stor", "liten", "major", "minor", "loud", "soft", "still",
    "lieblich", "echo", "solo", "choir", "swell", "pedal", "pedaal", "pedale", "manual", "no",
    "number", "nr", "first", "second", "third", "new", "old", "primo", "secondo", "ancillary",
    "enclosed", "unenclosed", "floating", "mounted", "bass", "bas", "basso", "treble", "discant",
    "diskant", "dessus", "soprano", "tiple", "bajo", "tiples", "sopran", "de", "di", "du", "the",
    "rank", "ranks", "rks", "fach", "fois", "rangs", "sterk", "stark", "st", "hileras", "file",
    "korig", "kor", "ft", "feet", "foot", "fuss", "pieds", "voet", "fot", "fod", "wood", "metal",
    "wooden", "holz", "bois", "legno", "harmonic", "harmonique", "harmonico",
})  # fmt: skip
_LOWERING = frozenset({"contra", "double", "sub", "kontra", "contre", "contro", "dubbel"})
_PLAIN = _QUALIFIERS | _LOWERING
_BEFORE = (*sorted(_LOWERING), "gross", "groot", "klein", "still", "lieblich")
_AFTER = ("bass", "bas", "diskant", "discant")
_IN_BRACKETS = re.compile(r"\([^()]*\)|\[[^][]*\]")


@dataclass(frozen=True, slots=True)
class Entry:
    """What one name means in one language; ``pedal_lengths`` where the pedals differ."""

    name: str
    language: str
    family: Family
    construction: Construction
    lengths: tuple[Fraction, ...]
    compound: bool
    counts: tuple[int, ...]
    from_key: int | None
    what_for: str
    traps: str
    source: str
    pedal_lengths: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class Match:
    """An entry found; ``exact`` when every word of the name was understood as it stands."""

    entry: Entry
    exact: bool


@cache
def entries() -> tuple[Entry, ...]:
    """Give every entry of the lexicon, in the order of the file."""
    with Path(__file__).with_name("lexicon.csv").open(encoding="utf-8", newline="") as file:
        return tuple(_entry(row) for row in csv.DictReader(file))


def _entry(row: dict[str, str]) -> Entry:
    return Entry(
        name=row["name"],
        language=row["language"],
        family=Family(row["family"]),
        construction=Construction(row["construction"]),
        lengths=_lengths(row["lengths"]),
        compound=row["compound"] == "yes",
        counts=tuple(int(count) for count in row["counts"].split()),
        from_key=int(row["from_key"]) if row["from_key"] else None,
        what_for=row["what_for"],
        traps=row["traps"],
        source=row["source"],
        pedal_lengths=_lengths(row["pedal_lengths"]),
    )


@cache
def _lengths(cell: str) -> tuple[Fraction, ...]:
    return tuple(parse_length(length) for length in cell.split(";") if length)


@cache
def _index() -> dict[str, tuple[Entry, ...]]:
    found: dict[str, tuple[Entry, ...]] = {}
    for entry in entries():
        key = fold(entry.name)
        found[key] = (*found.get(key, ()), entry)
    return found


@lru_cache(maxsize=4096)
def find_name(text: str, language: str = "", pedal: bool = False) -> Match | None:
    """Find what a stop's name means, or None where nothing is clearly nearest.

    Accents, case, spaces, plurals, common variant spellings and words such as "Large" or "No. 2"
    are no difference. Anything less sure comes back with ``exact`` False, never silently.
    ``language`` is preferred where a name means different stops; ``pedal`` asks for the length
    usual on the pedals. Contra, Double and Sub lower the usual length by an octave.
    """
    if len(text) > LONGEST_NAME:
        return None
    match = _as_written(text, language) or _by_its_words(text, language)
    if match and pedal and match.entry.pedal_lengths:
        return replace(match, entry=replace(match.entry, lengths=match.entry.pedal_lengths))
    return match


def _as_written(text: str, language: str) -> Match | None:
    named = _index().get(fold(text))
    return Match(_likeliest(named, text, language), exact=True) if named else None


def _likeliest(named: Sequence[Entry], text: str, language: str) -> Entry:
    """Choose the entry in the language asked, then the one spelled as the text is."""

    def fitness(entry: Entry) -> tuple[bool, bool, bool, int]:
        return (
            entry.language == language,
            entry.name.casefold() == text.casefold(),
            split_name(entry.name) == split_name(text),
            -LANGUAGES.index(entry.language),
        )

    return max(named, key=fitness)


def _by_its_words(text: str, language: str) -> Match | None:
    written = name_words(_IN_BRACKETS.sub(" ", text))
    words = [part for word in written for part in _unglued(word)]
    heads = list(_heads(words, language))
    understood = [head for head in heads if not head.unknown]
    if understood:
        return _best(understood, words, language, exact=True)
    near = _nearest(words, text, language)
    if near:
        return near
    guesses = [head for head in heads if head.unknown <= 2]
    return _best(guesses, words, language, exact=False) if guesses else None


def _unglued(word: str) -> list[str]:
    """Take a glued qualifier off a word that is no name itself: Kontratrompete, Gemshornbass."""
    if fold_word(word) in _index():
        return [word]
    for prefix in _BEFORE:
        rest = word.removeprefix(prefix)
        if rest != word and fold_word(rest) in _index():
            return [prefix, rest]
    for suffix in _AFTER:
        rest = word.removesuffix(suffix)
        if rest != word and fold_word(rest) in _index():
            return [rest, suffix]
    return [word]


@dataclass(frozen=True, slots=True)
class _Head:
    """Some words in a row that are a name, and how many of the others are not understood."""

    entry: Entry
    start: int
    size: int
    unknown: int


def _heads(words: list[str], language: str) -> Iterator[_Head]:
    for start in range(len(words)):
        for stop in range(start + 1, len(words) + 1):
            named = _index().get(fold_words(words[start:stop]))
            if named:
                others = words[:start] + words[stop:]
                unknown = sum(word not in _PLAIN for word in others)
                entry = _likeliest(named, " ".join(words[start:stop]), language)
                yield _Head(entry, start, stop - start, unknown)


def _best(heads: list[_Head], words: list[str], language: str, *, exact: bool) -> Match:
    def fitness(head: _Head) -> tuple[int, bool, int]:
        place = -head.start if head.entry.language in _NAME_FIRST else head.start
        return head.size, head.entry.language == language, place

    best = max(heads, key=fitness)
    others = words[: best.start] + words[best.start + best.size :]
    return Match(_lowered(best.entry, others), exact)


def _lowered(entry: Entry, others: list[str]) -> Entry:
    if _LOWERING.isdisjoint(others):
        return entry
    return replace(
        entry,
        lengths=tuple(2 * length for length in entry.lengths),
        pedal_lengths=tuple(2 * length for length in entry.pedal_lengths),
    )


def _nearest(words: list[str], text: str, language: str) -> Match | None:
    """Find a misspelt name: one slip in a short one, two in a long one, no other so near."""
    named = [word for word in words if word not in _PLAIN]
    key = fold_words(named)
    slips = 0 if len(key) < 5 else 1 if len(key) < 9 else 2
    near = process.extract(key, _index().keys(), scorer=OSA.distance, score_cutoff=slips, limit=8)
    if not near:
        return None
    closest = [
        one for found, distance, _ in near if distance == near[0][1] for one in _index()[found]
    ]
    if len({(one.family, one.compound) for one in closest}) > 1:
        return None
    return Match(_lowered(_likeliest(closest, text, language), words), exact=False)
