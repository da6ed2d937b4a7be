"""Ground: what a stop needs beneath it before the checks are quiet, and where it is played.

Worked out by the checks: combinations are put to them, names never are.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ, Stop
from instruments.pipework import pitches_of, stop_compass
from instruments.tone import Family
from registrations.checks import run
from registrations.checks.findings import Finding, Level
from registrations.checks.kinds import is_compound
from registrations.checks.scene import Scene
from registrations.combination import Combination, Hands

#: So many stops are sought as the ground of another.
_MOST_NEEDED = 4
#: What a stop that cannot stand alone is set on: common practice, no source.
_UNISONS = {KeyboardKind.MANUAL: frozenset([8]), KeyboardKind.PEDAL: frozenset([8, 16, 32])}
_LEVELS = tuple(Level)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a stop is played; ``coupler`` brings it there where its division floats."""

    keyboard: Keyboard
    coupler: Coupler | None = None

    @property
    def hands(self) -> Hands:
        """The feet on the pedals, or the right hand on a manual."""
        if self.keyboard.kind is KeyboardKind.PEDAL:
            return Hands(feet=self.keyboard.id)
        return Hands(right=self.keyboard.id)


@dataclass(frozen=True, slots=True)
class Ground:
    """The smallest additions on which a stop stands, and what the checks say even then."""

    needs: tuple[Stop, ...] = ()
    still: tuple[Finding, ...] = ()


def place_of(organ: Organ, division: Division) -> Place | None:
    """Give where a division is played: at home, or from the first keyboard a coupler takes."""
    if division.keyboard is not None:
        return Place(organ.keyboard(division.keyboard))
    for keyboard in organ.keyboards:
        coupler = coupler_to(organ, division, keyboard)
        if coupler is not None:
            return Place(keyboard, coupler)
    return None


def coupler_to(organ: Organ, division: Division, keyboard: Keyboard) -> Coupler | None:
    """Give the coupler that brings a division to a keyboard at its own pitch, None without one."""
    way = division.id, keyboard.id
    unisons = (one for one in organ.couplers if one.octave == 8 and not one.unison_off)
    return next((one for one in unisons if (one.source, one.target) == way), None)


def drawn_at(
    place: Place | None, stops: Iterable[Stop], couplers: Iterable[Coupler | None] = ()
) -> Combination:
    """Give the combination of stops played at a place; without one no hand is put anywhere."""
    through = (place.coupler, *couplers) if place else tuple(couplers)
    drawn = {stop.id for stop in stops} | {one.id for one in through if one is not None}
    return Combination(frozenset(drawn), place.hands if place else Hands())


@lru_cache(maxsize=8)
def grounds_of(organ: Organ) -> Mapping[str, Ground]:
    """Give the ground of every stop of an organ, by its id; kept by value."""
    return {stop.id: _ground(organ, division, stop) for division, stop in organ.stops()}


def _ground(organ: Organ, division: Division, stop: Stop) -> Ground:
    place = place_of(organ, division)
    best = Ground((), run(Scene(organ, drawn_at(place, (stop,)))))
    if place is None or not best.still:
        return best
    for additions in _additions(organ, division, stop):
        scene = Scene(organ, drawn_at(place, (stop, *additions)))
        found = run(scene)
        if weight(found) < weight(best.still) and _is_grounded(scene, place.keyboard, stop):
            best = Ground(additions, found)
            if not found:
                break
    return best


def _additions(organ: Organ, division: Division, stop: Stop) -> Iterator[tuple[Stop, ...]]:
    """Give sets of stops of a division, the smallest first; longest pitches first in each.

    Of stops with the same pitches at the same keys the likeliest stands for all: one that does not
    beat, of the tone of ``stop``, of one rank, not a reed.
    """
    likely = sorted(
        (other for other in division.stops if other is not stop),
        key=lambda other: (
            other.is_undulating,
            other.family is not stop.family,
            is_compound(other),
            other.family is Family.REED,
        ),
    )
    pitches: dict[object, Stop] = {}
    for other in likely:
        key = pitches_of(other), stop_compass(organ, division, other)
        pitches.setdefault(key, other)
    for size in range(1, _MOST_NEEDED + 1):
        for chosen in combinations(pitches.values(), size):
            yield tuple(sorted(chosen, key=_longest, reverse=True))


def _longest(stop: Stop) -> float:
    return float(max((length for zone in pitches_of(stop) for length in zone.lengths), default=0))


def _is_grounded(scene: Scene, keyboard: Keyboard, stop: Stop) -> bool:
    """Tell whether a unison sounds at every key at which the stop does."""
    sounding = [
        {part.length for part in span.parts}
        for span in scene.spans_on(keyboard)
        if any(part.stop is stop for part in span.parts)
    ]
    return all(lengths & _UNISONS[keyboard.kind] for lengths in sounding)


def weight(found: Iterable[Finding]) -> tuple[int, int]:
    """Give how much findings weigh: the worst level first, then how many there are."""
    levels = [len(_LEVELS) - _LEVELS.index(one.level) for one in found]
    return max(levels, default=0), len(levels)
