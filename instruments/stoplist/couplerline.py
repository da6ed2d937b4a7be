"""Couplerline: one piece of a list as couplers: what is carried, to which keys, at which octave."""

import re
from dataclasses import dataclass
from functools import cache, lru_cache

from instruments.stoplist.tables import homes, plain, words, words_of

_TOKEN = re.compile(r"[^\W\d_]+(?:['’]o\w+)?\.?|\d{1,2}\s?['’′]?|[/→>]|[-–—+&=]")
_SIGNS = {
    "/": "/",
    "→": "to",
    ">": "to",
    "-": "-",
    "–": "-",
    "—": "-",
    "+": "-",
    "&": "-",
    "=": "-",
}
_COUPLES = re.compile(r"(?:koppel|koppeln|kopplung|koppelung|koppeling|koppelingen|kobling)$")
#: What stands between couplers; “and” only where two short forms follow, as in I/II.
APART = re.compile(r"[;,•]\s+|\s·\s|\s(?:und|and|et|en|og|och|y)\s(?=\S+\s?[/-]\s?\S)")
_ROMANS = {"i": 1, "ii": 2, "iii": 3, "iv": 4, "v": 5, "vi": 6}


@dataclass(frozen=True, slots=True)
class CouplerLine:
    """A coupler of a piece: the division words it names, the octave, and what joins them.

    ``source`` and ``target`` are plain words or numbers of manuals, empty where none is named;
    ``link`` is ``to`` (or a word like it), ``/``, ``-``, or nothing.
    """

    source: str
    target: str
    link: str
    octave: int = 8
    unison_off: bool = False
    pedal: bool = False


@dataclass(slots=True)
class _Tokens:
    """The parts of a piece by what they say."""

    divisions: list[str]
    links: list[str]
    octaves: list[int]
    coupling: bool = False
    pedal: bool = False
    off: bool = False


@lru_cache(maxsize=2048)
def read_couplers(text: str, *, among_couplers: bool = False) -> tuple[CouplerLine, ...]:
    """Read a piece as couplers; none when a word of it says something else.

    ``among_couplers`` is whether the piece stands under a heading of couplers, where a division
    and an octave are enough.
    """
    if len(text) > 160:
        return ()
    found = _tokens(text)
    if found is None or len(found.divisions) > 2:
        return ()
    spoken = words_of(text)
    if spoken and not found.divisions and words("all_couplers").issuperset(spoken):
        return (CouplerLine("", "", "all"),)
    if found.pedal and len(found.divisions) == 2:
        return tuple(CouplerLine(one, "", "to", pedal=True) for one in found.divisions)
    octaves = list(dict.fromkeys(found.octaves)) or [8]
    if len(found.divisions) == 2:
        return _of_two(found, octaves, among_couplers)
    return _of_one(found, octaves, among_couplers)


def _of_two(found: _Tokens, octaves: list[int], among: bool) -> tuple[CouplerLine, ...]:
    source, target = found.divisions
    link = found.links[0] if found.links else ""
    if not link and not found.coupling and not among:
        return ()
    if found.off:
        octaves = found.octaves
    made = [CouplerLine(source, target, link or "/", one) for one in octaves]
    if found.off:
        made.append(CouplerLine(source, source, "", unison_off=True))
    return tuple(made)


def _of_one(found: _Tokens, octaves: list[int], among: bool) -> tuple[CouplerLine, ...]:
    own = found.divisions[0] if found.divisions else ""
    if found.pedal or (found.coupling and any(one.is_pedal for one in homes().get(own, ()))):
        own = "" if any(one.is_pedal for one in homes().get(own, ())) else own
        return tuple(CouplerLine(own, "", "to", one, pedal=True) for one in octaves)
    said = bool(found.octaves) or found.off or found.coupling
    if not said or (not own and not among and not found.coupling):
        return ()
    if found.links and not found.off:
        return ()
    if not found.octaves and found.coupling and not found.off:
        return (CouplerLine("", own, "to"),)
    made = [CouplerLine(own, own, "", one) for one in octaves if one != 8]
    if found.off:
        made.append(CouplerLine(own, own, "", unison_off=True))
    return tuple(made)


def _tokens(text: str) -> _Tokens | None:
    found = _Tokens([], [], [])
    parts = [part.strip() for part in _TOKEN.findall(plain(_joined(text)))]
    at = 0
    while at < len(parts):
        size = _take(parts, at, found)
        if size == 0:
            return None
        at += size
    return found


def _joined(text: str) -> str:
    """Write what is two words in some lists as one: sub octave, unison off, g. o."""
    text = re.sub(r"(?i)\b(sub|super|unter|ober)[- ](?=o[ck]t)", r"\1", text)
    text = re.sub(r"(?i)\bgrand[-’' ]*(?=or[gq])", "grand ", text)
    text = re.sub(r"(?i)\boctaves?\s(?=graves?\b|aigu)", "", text)
    return re.sub(r"\b([GO])\.\s?([OCV])\b\.?", r"\1\2", text)


def _take(parts: list[str], at: int, found: _Tokens) -> int:
    """Understand the part at a place, and those that go with it; give how many, 0 for none."""
    part = parts[at].rstrip(".")
    if part in _SIGNS:
        if found.divisions and len(found.divisions) < 2:
            found.links.append(_SIGNS[part])
        return 1
    size = _division_at(parts, at)
    if size and not (size == 1 and part in words("super") | words("sub")):
        found.divisions.append(" ".join(one.rstrip(".") for one in parts[at : at + size]))
        return size
    return int(_simple(part, found))


def _simple(part: str, found: _Tokens) -> bool:
    digits = part.rstrip(" '’′")
    if digits.isdigit():
        if digits not in {"16", "8", "4"}:
            return False
        found.octaves.append(int(digits))
    elif part in words("sub") | words("super"):
        found.octaves.append(16 if part in words("sub") else 4)
        found.coupling = found.coupling or "kop" in part
    elif part in words("coupling") or _COUPLES.search(part):
        found.coupling = found.coupling or part not in words("weak_coupling")
        found.pedal = found.pedal or part in words("pedal_coupling")
    elif part in words("off"):
        found.off = True
    elif part in words("links"):
        if len(found.divisions) == 1:
            found.links.append("to")
    else:
        return part in {"and", "und", "et", "e", "en", "y", "og", "och", "uo"} and _and(part, found)
    return True


def _and(part: str, found: _Tokens) -> bool:
    found.off = found.off or part == "uo"
    return True


def _division_at(parts: list[str], at: int) -> int:
    for size in (3, 2, 1):
        phrase = " ".join(one.rstrip(".") for one in parts[at : at + size])
        if at + size <= len(parts) and (phrase in homes() or phrase in _ROMANS):
            return 0 if size == 1 and phrase in _neither() else size
    return 0


@cache
def _neither() -> frozenset[str]:
    """Give words that head a division elsewhere, and among couplers say only that they couple."""
    return frozenset({"manual", "manuals", "organo", "clavier"})


def manual_number(word: str) -> int:
    """Give the number of a manual that a word is (``II`` is 2), 0 for another word."""
    return _ROMANS.get(word, 0)


def are_couplers(text: str) -> bool:
    """Say whether a text names couplers alone, parted by commas if there are several."""
    parts = [part for part in APART.split(text) if words_of(part)]
    return bool(parts) and all(read_couplers(part) for part in parts)


def is_coupler_heading(text: str) -> bool:
    """Say whether a line only heads couplers or accessories."""
    spoken = re.findall(r"[^\W\d_]+|&", plain(text))
    if re.search(r"\d", text):
        return False
    return 0 < len(spoken) <= 6 and words("coupler_headings").issuperset(spoken)
