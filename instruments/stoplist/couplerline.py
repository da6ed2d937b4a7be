"""Couplerline: one line of a list as couplers: what is carried, to which keys, at which octave."""

import re
from dataclasses import dataclass

from instruments.stoplist.tables import DIVISIONS

_TO = re.compile(
    r"^\s*(?P<source>[a-z]+\.?)\s*(?:\bto\b|/|-|–|>|→)\s*(?P<target>[a-z]+\.?)\b(?P<rest>.*)$", re.I
)
_OWN = re.compile(
    r"^\s*(?P<source>[a-z]+)\s+(?P<what>sub[- ]?octave|super[- ]?octave|octave|unison off|4|16)\b\.?\s*(?P<rest>.*)$",
    re.I,
)
_OCTAVES = re.compile(
    r"\b(?P<number>16|8|4)\b['’′]?|\b(?P<sub>sub(?:[- ]?octave)?)\b|\b(?P<up>super(?:[- ]?octave)?|octave)\b|\b(?P<unison>unison)\b",
    re.I,
)


@dataclass(frozen=True, slots=True)
class CouplerLine:
    """One coupler of a line: division names, the octave it sounds at."""

    name: str
    source: str
    target: str
    octave: int = 8
    unison_off: bool = False


def read_couplers(text: str) -> tuple[CouplerLine, ...]:
    """Read a line as couplers; none when it is not one."""
    plain = re.sub(r"^\s*(?:\d{1,3}[.)]|[-•*])\s+", "", text).strip(" .,;")
    match = _TO.match(plain)
    if match:
        return _between(match)
    match = _OWN.match(plain)
    source = _division(match["source"]) if match else None
    if match is None or source is None or match["rest"].strip(" '’′()"):
        return ()
    what = match["what"].lower().replace("-", " ")
    if what == "unison off":
        return (CouplerLine(f"{source} unison off", source, source, unison_off=True),)
    sub = what.startswith("sub") or what == "16"
    return (
        CouplerLine(
            f"{source} {'sub-octave' if sub else 'octave'}", source, source, 16 if sub else 4
        ),
    )


def _between(match: re.Match[str]) -> tuple[CouplerLine, ...]:
    source, target = _division(match["source"]), _division(match["target"])
    if source is None or target is None:
        return ()
    rest = match["rest"].strip()
    found = list(_OCTAVES.finditer(rest))
    leftover = re.sub(
        r"[\s,;&.'’′()/-]|\band\b|\bcoupler\b", "", _OCTAVES.sub("", rest), flags=re.I
    )
    if leftover:
        return ()
    octaves = [_octave(one) for one in found] or [8]
    name = f"{source} to {target}"
    return tuple(
        CouplerLine(name if octave == 8 else f"{name} {octave}", source, target, octave)
        for octave in dict.fromkeys(octaves)
    )


def _octave(match: re.Match[str]) -> int:
    if match["number"]:
        return int(match["number"])
    return 16 if match["sub"] else 4 if match["up"] else 8


def _division(word: str) -> str | None:
    return DIVISIONS.get(word.lower().rstrip("."))
