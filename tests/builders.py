"""Plain functions that make values for tests."""

import re

from instruments.compass import parse_compass
from instruments.mixtures import Zone, parse_ordinals
from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ, Stop, Tremulant
from instruments.pitch import parse_length
from instruments.tone import Construction, Family
from registrations.combination import Combination, Hands

#: An organ for tests that need some organ and do not care which.
PARISH = {
    "great": (
        "Open Diapason 8",
        "Principal 4",
        "Twelfth 2 2/3",
        "Fifteenth 2",
        "Mixture 19.22.26",
        "Trumpet 8 (reed full-length)",
    ),
    "swell": (
        "Stopped Diapason 8 (flute stopped)",
        "Salicional 8 (string)",
        "Celeste 8 (string undulating)",
        "Flute 4 (flute)",
        "Nazard 2 2/3 (flute)",
        "Tierce 1 3/5 (flute)",
        "Oboe 8 (reed narrow-conical)",
    ),
    "pedal": ("Bourdon 16 (flute stopped)", "Bass Flute 8 (flute)"),
}
PARISH_COUPLERS = ("Swell to Great", "Swell to Great 4", "Great to Pedal", "Swell to Pedal")

_STOP = re.compile(r"(?P<name>.*?)(?: (?P<figure>[\d./ ]+))?(?: \((?P<tone>[a-z -]+)\))?")


def slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def a_stop(text: str = "Principal 8", family: str = "principal", **given) -> Stop:
    """``Twelfth 2 2/3``, ``Mixture 15.19.22``, ``Oboe 8 (reed narrow-conical)``."""
    match = _STOP.fullmatch(text)
    figure, (family, *rest) = match["figure"], (match["tone"] or family).split()
    lengths = parse_ordinals(figure or "")
    values = {
        "id": slug(f"{match['name']} {figure or ''}"),
        "name": match["name"],
        "length": parse_length(figure) if figure and not lengths else None,
        "family": Family(family),
        "construction": Construction(rest[0] if rest else "open"),
        "ranks": len(lengths) or 1,
        "composition": (Zone(0, lengths),) if lengths else (),
    }
    return Stop(**{**values, **given})


def a_division(name: str, stops=(), **given) -> Division:
    """Stops are texts for ``a_stop`` or stops; each id gets the division's before it."""
    made = tuple(a_stop(stop) if isinstance(stop, str) else stop for stop in stops)
    prefixed = tuple(_in_division(slug(name), stop) for stop in made)
    values = {"id": slug(name), "name": name, "keyboard": slug(name), "stops": prefixed}
    return Division(**{**values, **given})


def _in_division(division: str, stop: Stop) -> Stop:
    fields = {name: getattr(stop, name) for name in Stop.__slots__}
    return Stop(**{**fields, "id": f"{division}/{stop.id}"})


def a_coupler(text: str) -> Coupler:
    """``Swell to Great``, ``Swell to Great 4``, ``Swell Unison Off``."""
    if text.endswith(" Unison Off"):
        home = slug(text.removesuffix(" Unison Off"))
        return Coupler(slug(text), text, home, home, unison_off=True)
    source, target, *octave = re.split(r" to | (?=\d+$)", text)
    return Coupler(slug(text), text, slug(source), slug(target), int(octave[0]) if octave else 8)


def an_organ(
    couplers=None, tremulants=(), floating=(), compass="C-c4", pedal_compass="C-g1", **divisions
) -> Organ:
    """``an_organ(great=["Principal 8"], couplers=["Great to Great 4"])``; bare, PARISH."""
    given = divisions or PARISH
    if couplers is None:
        couplers = () if divisions else PARISH_COUPLERS
    return Organ(
        name="An organ",
        keyboards=tuple(
            Keyboard(name, name.title(), KeyboardKind.PEDAL, parse_compass(pedal_compass))
            if name == "pedal"
            else Keyboard(name, name.title(), KeyboardKind.MANUAL, parse_compass(compass))
            for name in given
            if name not in floating
        ),
        divisions=tuple(
            a_division(
                name.title(),
                stops,
                keyboard=None if name in floating else name,
                tremulants=(Tremulant(f"{name}/tremulant", "Tremulant"),) * (name in tremulants),
            )
            for name, stops in given.items()
        ),
        couplers=tuple(map(a_coupler, couplers)),
    )


def a_combination(*drawn: str, right=None, left=None, feet=None) -> Combination:
    return Combination(frozenset(drawn), Hands(right, left, feet))
