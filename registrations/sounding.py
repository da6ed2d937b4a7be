"""Sounding: for every key of every keyboard, exactly the pipes that speak.

An ``Organ`` and a ``Combination`` go in; ids drawn that the organ does not have sound nothing.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, pairwise, zip_longest

from instruments.compass import Compass
from instruments.organ import Keyboard, Organ, Stop
from instruments.pipework import Pipe, composition_of, pipework, pitches_of, stop_compass
from instruments.pitch import semitones
from registrations.combination import Combination
from registrations.coupling import meet, routes


@dataclass(frozen=True, slots=True)
class Reach:
    """A stop as it is reached from a keyboard, over the played keys ``low`` to ``high``.

    Key ``k`` sounds its pipe ``k + shift``; ``via`` are the couplers passed, none at home.
    """

    keyboard: str
    division: str
    stop: Stop
    shift: int
    via: tuple[str, ...]
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Part:
    """One pitch of a stop, as the length that it is heard at from the played key."""

    division: str
    stop: Stop
    shift: int
    length: Fraction


@dataclass(frozen=True, slots=True)
class Span:
    """The keys ``low`` to ``high`` of a keyboard, over which the same parts sound (or none)."""

    low: int
    high: int
    parts: tuple[Part, ...]


def reaches(organ: Organ, combination: Combination) -> tuple[Reach, ...]:
    """Give every drawn stop as it is reached from every keyboard, in console order.

    A stop reached by two couplers, or around missing keys, is given several times.
    """
    drawn = {
        division.id: [
            (stop, stop_compass(organ, division, stop))
            for stop in division.stops
            if stop.id in combination.drawn
        ]
        for division in organ.divisions
    }
    return tuple(
        Reach(way.keyboard, way.division, stop, way.shift, way.via, low, high)
        for way in routes(organ, combination.drawn)
        for stop, compass in drawn[way.division]
        for low, high in _runs(meet(way.keys, compass, way.shift))
    )


def spans(organ: Organ, combination: Combination, keyboard_id: str) -> tuple[Span, ...]:
    """Give the keyboard's compass in stretches over which the same sounds, from low to high."""
    return spans_of(reaches(organ, combination), organ.keyboard(keyboard_id))


def spans_of(found: Iterable[Reach], keyboard: Keyboard) -> tuple[Span, ...]:
    """Give the spans of a keyboard from reaches that are known already."""
    pieces = [piece for one in found if one.keyboard == keyboard.id for piece in _pieces(one)]
    cuts = {keyboard.compass.low, keyboard.compass.high + 1}
    for piece in pieces:
        cuts |= {piece.low, piece.high + 1}
    stretches: list[Span] = []
    for start, end in pairwise(sorted(cuts)):
        parts = _parts(pieces, start)
        if stretches and stretches[-1].parts == parts:
            stretches[-1] = Span(stretches[-1].low, end - 1, parts)
        else:
            stretches.append(Span(start, end - 1, parts))
    return tuple(stretches)


def _pieces(reach: Reach) -> Iterator[Span]:
    """Give what one reach sounds, a span for each zone of its composition."""
    zones = pitches_of(reach.stop)
    for zone, above in zip_longest(zones, zones[1:]):
        low = max(reach.low, zone.start - reach.shift)
        high = reach.high if above is None else min(reach.high, above.start - reach.shift - 1)
        if low <= high:
            lengths = dict.fromkeys(heard(length, reach.shift) for length in zone.lengths)
            yield Span(
                low,
                high,
                tuple(Part(reach.division, reach.stop, reach.shift, one) for one in lengths),
            )


def _parts(pieces: list[Span], key: int) -> tuple[Part, ...]:
    """Give what sounds at a key; a stop that is reached twice at one pitch is there once."""
    sounding = {
        (piece.parts[0].stop.id, piece.parts[0].shift): piece.parts
        for piece in pieces
        if piece.low <= key <= piece.high
    }
    return tuple(chain.from_iterable(sounding.values()))


def heard(length: Fraction, shift: int) -> Fraction:
    """Give the length that is heard from the played key: an octave up (12) halves it."""
    if shift >= 0:
        return length / (1 << shift // 12)
    return length * (1 << -shift // 12)


def lengths_on(organ: Organ, combination: Combination, keyboard_id: str) -> tuple[Fraction, ...]:
    """Give the lengths heard anywhere on a keyboard, longest first."""
    return lengths_of(spans(organ, combination, keyboard_id))


def lengths_of(found: Iterable[Span]) -> tuple[Fraction, ...]:
    """Give the lengths of spans, each once, longest first."""
    lengths = (part.length for span in found for part in span.parts)
    # A pair of whole numbers is compared a good deal faster than a fraction.
    distinct = {length.as_integer_ratio(): length for length in lengths}
    return tuple(sorted(distinct.values(), reverse=True))


def sounds(organ: Organ, combination: Combination, keyboard_id: str) -> bool:
    """Tell whether any key of a keyboard makes a sound, pitched or not."""
    return any(one.keyboard == keyboard_id for one in reaches(organ, combination))


def pipes_at(organ: Organ, combination: Combination, keyboard_id: str, key: int) -> frozenset[Pipe]:
    """Give the pipes that speak when one key is played; a pipe reached twice speaks once."""
    work = pipework(organ)
    return frozenset(
        pipe
        for one in reaches(organ, combination)
        if one.keyboard == keyboard_id and one.low <= key <= one.high
        for pipe in work.pipes(one.stop, key + one.shift)
    )


#: A row of pipes, and the semitones from the played key to its pipe.
Row = tuple[str, int]


def rows_opened(reach: Reach, ranks: Mapping[str, str]) -> tuple[Row, ...]:
    """Give the rows of pipes that a reach opens; ``ranks`` are those of the organ, by stop id.

    Reaches that have a row in common open the same pipes at the keys they share. The rows of a
    compound stop break together and are given as one.
    """
    stop, row = reach.stop, ranks[reach.stop.id]
    if composition_of(stop):
        return ((f"{row}#", reach.shift),)
    offset = reach.shift + (0 if stop.length is None else semitones(stop.length))
    return tuple((f"{row}#{place}", offset) for place in range(1, stop.ranks + 1))


def _runs(keys: Compass) -> Iterator[tuple[int, int]]:
    """Give the unbroken runs of keys, as their ends."""
    low = keys.low
    for hole in sorted(keys.missing):
        if low <= hole <= keys.high:
            if low < hole:
                yield low, hole - 1
            low = hole + 1
    if low <= keys.high:
        yield low, keys.high
