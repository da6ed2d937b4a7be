"""The lexicon: what a stop's name says about its tone, its pipes and its usual length.

The names stand in ``lexicon.csv`` beside this module, each with its source.
"""

import csv
import re
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, lru_cache
from pathlib import Path

from rapidfuzz import process
from rapidfuzz.distance import OSA

from instruments.pitch import parse_length
from instruments.tone import Construction, Family

#: A name is never longer than this; longer text is a sentence.
LONGEST_NAME = 80

#: The order in which languages are asked when the list's own is not known.
LANGUAGES = ("en", "de", "fr", "nl", "it", "es", "sv", "da", "no", "pt", "pl", "cs")

#: Languages whose qualifying words follow the name ("Trompette militaire").
_NAME_FIRST = frozenset({"fr", "it", "es", "pt"})

#: Words that say where, how loud or which one, and leave the stop what it is: common practice.
_QUALIFIERS = frozenset(
    """
    large small grand grande great gross grosse groß groot klein kleine petit petite big stor liten
    major minor loud soft still lieblich echo solo choir swell pedal pedaal pedale manual no number
    nr first second third new old primo secondo ancillary enclosed unenclosed floating mounted
    bass bas basso treble discant diskant dessus soprano tiple bajo bajos tiples sopran de di du the
    rank ranks rks fach fois rangs sterk stark st hileras file korig kor ft feet foot fuss pieds
    voet fot fod wood metal wooden holz bois legno harmonic harmonique harmonico
    """.split()
)
_LOWERING = frozenset({"contra", "double", "sub", "kontra", "contre", "contro", "dubbel"})
_GLUED = tuple(sorted(_LOWERING | {"gross", "groot", "klein", "still", "lieblich"}))
_SHORT_FOR = {
    "diap": "diapason", "dia": "diapason", "op": "open", "stopd": "stopped", "stpd": "stopped",
    "dbl": "double", "orch": "orchestral", "lieb": "lieblich", "harm": "harmonic",
    "tpt": "trumpet", "prin": "principal", "princ": "principal", "mixt": "mixture",
    "12th": "twelfth", "15th": "fifteenth", "17th": "seventeenth", "19th": "nineteenth",
    "22nd": "twenty second", "clar": "clarion",
}  # fmt: skip
_APART = re.compile(r"[^\w']+|_+")
_IN_BRACKETS = re.compile(r"\([^()]*\)|\[[^][]*\]")
_NUMBER = re.compile(r"[ivx]+|\w*\d\w*")
_SPELLINGS = tuple(
    (re.compile(pattern), plain)
    for pattern, plain in (
        (r"ij|y", "i"),
        (r"sch", "sh"),
        (r"c(?=[eiy]|oe|ae)", "z"),
        (r"c(?!h)|q(?!u|v)", "k"),
        (r"qv", "qu"),
        (r"kh|ck", "k"),
        (r"ph", "f"),
        (r"th", "t"),
        (r"oe", "o"),
        (r"ae", "a"),
        (r"(?<!q)ue", "u"),
        (r"(.)\1+", r"\1"),
        (r"gedekt", "gedakt"),
    )
)
_LETTERS = str.maketrans({"ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "đ": "d", "ð": "d"})


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


def fold(name: str) -> str:
    """Fold a name to its bare letters: no accents, case, spaces, plurals or variant spellings."""
    return "".join(_fold_word(word) for word in _split(name))


def _split(text: str) -> list[str]:
    plain = unicodedata.normalize("NFKD", text.casefold().translate(_LETTERS))
    bare = "".join(letter for letter in plain if not unicodedata.combining(letter))
    words = _APART.split(bare.replace("’", "'"))
    return [word for word in (one.replace("'", "") for one in words) if word]


@lru_cache(maxsize=4096)
def _fold_word(word: str) -> str:
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "bas")):
        word = word[:-1]
    for pattern, plain in _SPELLINGS:
        word = pattern.sub(plain, word)
    return word


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
            _split(entry.name) == _split(text),
            -LANGUAGES.index(entry.language),
        )

    return max(named, key=fitness)


def _by_its_words(text: str, language: str) -> Match | None:
    words = list(_words(_IN_BRACKETS.sub(" ", text)))
    heads = list(_heads(words, language))
    understood = [head for head in heads if not head.unknown]
    if understood:
        return _best(understood, words, language, exact=True)
    near = _nearest(words, text, language)
    if near:
        return near
    guesses = [head for head in heads if head.unknown <= 2]
    return _best(guesses, words, language, exact=False) if guesses else None


def _words(text: str) -> Iterator[str]:
    """Give the words of a name without numbers, short forms written out, glued ones apart."""
    for word in _split(text):
        if word in _SHORT_FOR:
            yield from _SHORT_FOR[word].split()
        elif not _NUMBER.fullmatch(word):
            yield from _unglued(word)


def _unglued(word: str) -> Iterator[str]:
    for prefix in _GLUED:
        rest = word.removeprefix(prefix)
        if rest != word and _fold_word(rest) in _index() and _fold_word(word) not in _index():
            yield prefix
            word = rest
    yield word


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
            named = _index().get("".join(_fold_word(word) for word in words[start:stop]))
            if named:
                others = words[:start] + words[stop:]
                unknown = sum(word not in _QUALIFIERS | _LOWERING for word in others)
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
    """Find a misspelt name: one slip in a short one, two in a long one, and no other stop as near."""
    named = [word for word in words if word not in _QUALIFIERS | _LOWERING]
    key = "".join(_fold_word(word) for word in named)
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
