"""Pipework: which pipes and which pitches a stop has at the keys of its chest."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from instruments.compass import MIDDLE_C, Compass
from instruments.mixtures import Composition, Zone, customary, lengths_at
from instruments.organ import Division, Half, Organ, Stop
from instruments.pitch import is_octave, semitones
from instruments.tone import Family

#: Several ranks that begin no lower than this are a mixture, else ranks of one pitch. Common
#: practice, no source.
_LONGEST_MIXTURE = Fraction(8, 3)
_BELOW_ALL_KEYS = -1000


@dataclass(frozen=True, slots=True)
class Pipe:
    """One pipe: its rank, and its number in it from 1 at the lowest."""

    rank: str
    number: int


def stop_compass(organ: Organ, division: Division, stop: Stop) -> Compass:
    """Give the chest keys at which a stop has pipes.

    Its own compass where it has one; else the home keyboard's, of which a bass stop has the part
    below middle C and a treble stop the rest. A composition that begins higher counts from there.
    """
    compass = stop.compass or _half(organ.home_compass(division), stop.half)
    if stop.composition and stop.composition[0].start > compass.low:
        return Compass(stop.composition[0].start, compass.high, compass.missing)
    return compass


def _half(home: Compass, half: Half | None) -> Compass:
    if half is Half.BASS:
        return Compass(home.low, min(home.high, MIDDLE_C - 1), home.missing)
    if half is Half.TREBLE:
        return Compass(max(home.low, MIDDLE_C), home.high, home.missing)
    return home


def composition_of(stop: Stop) -> Composition:
    """Give a stop's composition; where none is known the customary one, none for single ranks.

    Several ranks without a length are a mixture; several that begin at 2 2/3 or above go on in
    fifths and fourths from there (2, 1 1/3, 1 ...).
    """
    if stop.composition or stop.ranks < 2 or stop.family is Family.PERCUSSION:
        return stop.composition
    if stop.length is None:
        return customary(stop.ranks)
    if stop.length > _LONGEST_MIXTURE:
        return ()
    lengths = [stop.length]
    while len(lengths) < stop.ranks:
        fifth_or_fourth = Fraction(2, 3) if is_octave(lengths[-1]) else Fraction(3, 4)
        lengths.append(lengths[-1] * fifth_or_fourth)
    return (Zone(0, tuple(lengths)),)


def pitches_of(stop: Stop) -> Composition:
    """Give the lengths of any stop by zones; none for a stop of no pitch (bells, a drum)."""
    zones = composition_of(stop)
    if zones or stop.length is None:
        return zones
    return (Zone(_BELOW_ALL_KEYS, (stop.length,)),)


def ranks(organ: Organ) -> dict[str, str]:
    """Give, by stop id, the row of pipes it uses: the lender's if it is borrowed, else its own."""
    stops = {one.id: one for _, one in organ.stops()}
    return {name: _lender(stop, stops) for name, stop in stops.items()}


def _lender(stop: Stop, stops: dict[str, Stop]) -> str:
    passed = {stop.id}
    while stop.borrowed_from in stops and stop.borrowed_from not in passed:
        passed.add(stop.borrowed_from)
        stop = stops[stop.borrowed_from]
    return stop.rank or stop.id


@dataclass(frozen=True, slots=True)
class Pipework:
    """All pipes of an organ: the rank of each stop, and where each row of pipes begins."""

    ranks: dict[str, str]
    bottoms: dict[str, int]

    def pipes(self, stop: Stop, key: int) -> Iterator[Pipe]:
        """Give the pipes of a stop at a chest key at which it has pipes."""
        for row, index in _rows(stop, self.ranks[stop.id], key):
            yield Pipe(row, index - self.bottoms[row] + 1)


def pipework(organ: Organ) -> Pipework:
    """Count the pipes of an organ, each row from the lowest pipe that any stop has of it.

    16, 8 and 4 from one rank over 61 keys come to 85 pipes.
    """
    names = ranks(organ)
    bottoms: dict[str, int] = {}
    for division, stop in organ.stops():
        compass = stop_compass(organ, division, stop)
        # A row of a mixture may begin at a break, any other where the stop does.
        for key in (compass.low, *(zone.start for zone in composition_of(stop))):
            if key in compass:
                for row, index in _rows(stop, names[stop.id], key):
                    bottoms[row] = min(index, bottoms.get(row, index))
    return Pipework(names, bottoms)


def _rows(stop: Stop, rank: str, key: int) -> Iterator[tuple[str, int]]:
    """Give the rows that speak at a key, and the semitones of each pipe above that of 8-foot C.

    The rows of a compound stop are its own and counted by keys.
    """
    zones = composition_of(stop)
    if zones:
        for place, _ in enumerate(lengths_at(zones, key), start=1):
            yield f"{rank}#{place}", key
        return
    index = key + (0 if stop.length is None else semitones(stop.length))
    for place in range(1, stop.ranks + 1):
        yield rank if place == 1 else f"{rank}#{place}", index
