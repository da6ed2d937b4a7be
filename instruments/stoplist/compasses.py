"""Compasses: the keys that a line gives to keyboards."""

import re

from instruments.compass import Compass, CompassError, compass_of_size, parse_compass

_KEY = r"[A-Ha-h](?:[#♯b♭]|is|es)?"
_RANGE = re.compile(
    rf"(?<![\w'’])(?P<low>C{{1,4}}|[A-G]{{1,2}}[#♯]?|[CFG][0-2])"
    rf"(?P<more>(?:,?\s?[D-HA]){{1,5}}(?=\s?[-–—]))?"
    rf"\s?(?:-|–|—|\bto\b|\bbis\b|\btot\b|\bà\b|\ba\b|\btil\b|\bt/m\b)\s?"
    rf"(?P<high>{_KEY})\s?(?P<octave>[1-6]|['’′´\"”″]{{1,4}})?(?![\w])"
)
_ENDS = re.compile(
    rf"\blow(?:est)?\W{{1,3}}(?P<low>C{{1,4}}|[A-G]{{1,2}}#?)\b.{{1,20}}?\bhigh(?:est)?\W{{1,3}}"
    rf"(?P<high>{_KEY})(?P<octave>[1-6])?(?P<more>\b)"
)
_SIZE = re.compile(
    r"(?<![\d.,/])(?P<size>[2-9]\d)[ -]?(?:notes?|keys|note|tasten|töne|toetsen|tonen|notas|teclas|"
    r"tasti|touches|noter|tangenter|taster|toner|nootjes)\b",
    re.IGNORECASE,
)


def compass_in(text: str) -> tuple[Compass, int, int] | None:
    """Find a compass (``C-g3``, ``CC to a³``, ``56 notes``) and where it stands in the text."""
    size = _SIZE.search(text)
    for match in (*_RANGE.finditer(text), *_ENDS.finditer(text)):
        compass = _compass(match)
        if compass is not None:
            return _sized(compass, size), match.start(), match.end()
    if size and 20 <= int(size["size"]) <= 97:
        return compass_of_size(int(size["size"])), size.start(), size.end()
    return None


def _sized(compass: Compass, size: re.Match[str] | None) -> Compass:
    """Give the compass of so many keys where its upper key tells no octave: CC to C, 61 notes."""
    count = int(size["size"]) if size else 0
    if count == len(compass) or compass.low or compass.missing or not 20 <= count <= 97:
        return compass
    return compass_of_size(count)


def without_compass(text: str) -> str:
    """Give a text without its compasses and counts of keys."""
    for pattern in (_RANGE, _SIZE):
        text = pattern.sub(" ", text)
    return text


def _compass(match: re.Match[str]) -> Compass | None:
    low = re.sub(r"\d", "", match["low"])
    low = "C" if set(low) == {"C"} else low
    more = re.findall("[A-H]", match["more"] or "")
    high = _high(match["high"], match["octave"] or "")
    for lows in ([low, *more], [low]):
        try:
            return parse_compass(f"{','.join(lows)}-{high}")
        except CompassError:
            continue
    return None


def _high(key: str, octave: str) -> str:
    letter = key[0].lower()
    sign = key[1:].replace("is", "#").replace("es", "b")
    number = (
        octave
        if octave.isdigit()
        else str(sum({'"': 2, "”": 2, "″": 2}.get(one, 1) for one in octave))
    )
    if number == "0":
        number = "1" if letter in "cdef" and key[0].islower() else "3" if key[0].isupper() else ""
    return f"{letter}{sign}{number}"
