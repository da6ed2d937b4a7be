"""Organ: the frozen values that everything else works on."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TypeVar

from instruments.compass import Compass
from instruments.consoles import UNKNOWN, Console
from instruments.mixtures import Composition
from instruments.tone import Construction, Family


class KeyboardKind(StrEnum):
    """What plays a keyboard: hands or feet."""

    MANUAL = "manual"
    PEDAL = "pedal"


class Coupling(StrEnum):
    """How far a coupler reaches.

    ``direct``: the drawn stops of the source division only. ``octaves``: the source's own octave
    couplers and unison-off are read through. ``chained``: the source keyboard's keys move, with all
    that is coupled to it, as on many mechanical actions.
    """

    DIRECT = "direct"
    OCTAVES = "octaves"
    CHAINED = "chained"


COUPLING_WORDS: dict[Coupling, str] = {
    Coupling.DIRECT: "A coupler carries the drawn stops of its division and nothing more "
    "(most electric actions).",
    Coupling.OCTAVES: "A coupler carries the drawn stops, and the division's own octave couplers "
    "and unison off act on what is carried.",
    Coupling.CHAINED: "A coupler pulls the keys of the other keyboard down, with all that is "
    "coupled to them (most mechanical actions).",
}


class Half(StrEnum):
    """Which half of a divided stop this control is."""

    BASS = "bass"
    TREBLE = "treble"


@dataclass(frozen=True, slots=True)
class Keyboard:
    """A manual or the pedals."""

    id: str
    name: str
    kind: KeyboardKind
    compass: Compass


@dataclass(frozen=True, slots=True)
class Stop:
    """One control that makes pipes available.

    ``length`` is None only for a stop of no nominal length (percussion, most mixtures). ``ranks``
    counts the ranks that speak at a key. ``compass`` is the keys of its chest it has pipes for,
    None for all. ``rank`` names a row of pipes that several stops share; ``borrowed_from`` the
    stop whose pipes it uses.
    """

    id: str
    name: str
    length: Fraction | None
    family: Family
    construction: Construction = Construction.OPEN
    ranks: int = 1
    compass: Compass | None = None
    composition: Composition = ()
    rank: str | None = None
    borrowed_from: str | None = None
    half: Half | None = None

    @property
    def is_compound(self) -> bool:
        """Whether one key of it sounds several ranks of different lengths."""
        return bool(self.composition)

    @property
    def is_undulating(self) -> bool:
        """Whether it is tuned apart so that it beats with another stop."""
        return self.construction is Construction.UNDULATING


@dataclass(frozen=True, slots=True)
class Tremulant:
    """Shakes the wind of its division."""

    id: str
    name: str


@dataclass(frozen=True, slots=True)
class Division:
    """A set of stops on one wind-chest; ``keyboard`` is its home, None when it floats."""

    id: str
    name: str
    keyboard: str | None
    enclosed: bool = False
    stops: tuple[Stop, ...] = ()
    tremulants: tuple[Tremulant, ...] = ()


@dataclass(frozen=True, slots=True)
class Coupler:
    """Makes keyboard ``target`` play division ``source``.

    ``octave`` is the pitch a drawn 8 sounds at: 16 an octave below, 8 at unison, 4 an octave above.
    ``unison_off`` silences the division's own unison instead of adding to it.
    """

    id: str
    name: str
    source: str
    target: str
    octave: int = 8
    unison_off: bool = False

    @property
    def shift(self) -> int:
        """Keys from the one played to the one that sounds: 12 up for 4, 12 down for 16."""
        return {16: -12, 8: 0, 4: 12}[self.octave]


_Named = TypeVar("_Named", Keyboard, Division)


@dataclass(frozen=True, slots=True)
class Organ:
    """One instrument."""

    name: str
    keyboards: tuple[Keyboard, ...]
    divisions: tuple[Division, ...]
    couplers: tuple[Coupler, ...] = ()
    accessories: tuple[str, ...] = ()
    place: str = ""
    pitch_hz: float = 440.0
    temperament: str = "equal"
    coupling: Coupling = Coupling.DIRECT
    console: Console = UNKNOWN
    notes: str = ""

    def keyboard(self, keyboard_id: str) -> Keyboard:
        """Give the keyboard of this id; KeyError when there is none."""
        return _by_id(self.keyboards, keyboard_id)

    def division(self, division_id: str) -> Division:
        """Give the division of this id; KeyError when there is none."""
        return _by_id(self.divisions, division_id)

    def home_compass(self, division: Division) -> Compass:
        """Give the compass of the division's home keyboard; floating, it has the first manual's.

        An organ without a manual lends its first keyboard's.
        """
        if division.keyboard is not None:
            return self.keyboard(division.keyboard).compass
        manuals = (one for one in self.keyboards if one.kind is KeyboardKind.MANUAL)
        return next(manuals, self.keyboards[0]).compass

    def keyboards_from_top(self) -> tuple[Keyboard, ...]:
        """Give the keyboards from the top down, as the console says; what it leaves out comes last.

        Where ``console.keyboards`` is empty nobody has said, and the order is the organ's own.
        """
        order = self.console.keyboards
        places = {name: at for at, name in enumerate(order)}
        return tuple(sorted(self.keyboards, key=lambda one: places.get(one.id, len(order))))

    def stops(self) -> Iterator[tuple[Division, Stop]]:
        """Give every stop with its division, in console order."""
        return ((division, stop) for division in self.divisions for stop in division.stops)

    def tremulants(self) -> Iterator[tuple[Division, Tremulant]]:
        """Give every tremulant with its division, in console order."""
        return ((division, one) for division in self.divisions for one in division.tremulants)

    def control_ids(self) -> frozenset[str]:
        """Give the ids of everything that can be drawn."""
        return frozenset(
            [stop.id for _, stop in self.stops()]
            + [tremulant.id for _, tremulant in self.tremulants()]
            + [coupler.id for coupler in self.couplers]
        )


def _by_id(things: tuple[_Named, ...], wanted: str) -> _Named:
    for thing in things:
        if thing.id == wanted:
            return thing
    raise KeyError(wanted)


def coupler_words(organ: Organ, coupler: Coupler) -> str:
    """Say what a coupler does: ``The Great keyboard also plays the Swell, an octave higher.``"""
    source, target = organ.division(coupler.source), organ.keyboard(coupler.target)
    if coupler.unison_off:
        return f"The {target.name} keyboard no longer plays the {source.name} at its own pitch."
    if source.keyboard == target.id:
        octave = {16: "the octave below", 4: "the octave above"}.get(coupler.octave, "itself")
        return f"Each key of the {target.name} also plays {octave}."
    octave = {16: ", an octave lower", 4: ", an octave higher"}.get(coupler.octave, "")
    feet = target.kind is KeyboardKind.PEDAL
    player = "The feet" if feet else f"The {target.name} keyboard"
    return f"{player} also play{'' if feet else 's'} the {source.name}{octave}."
