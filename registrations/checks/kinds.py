"""Kinds: what a teacher calls a stop, told from its pitches, its tone and how it is made."""

from collections.abc import Iterable
from fractions import Fraction

from instruments.organ import Stop
from instruments.pipework import composition_of, pitches_of
from instruments.pitch import UNISON, is_octave
from instruments.tone import Construction, Family

#: 1 3/5 and its octaves sound a third (5, 10, 20 ... in the series of 8; 5 of 16 or of 32).
_THIRD = 5


def is_compound(stop: Stop) -> bool:
    """Tell whether one key of it sounds ranks of several lengths."""
    return bool(composition_of(stop))


def is_solo_compound(stop: Stop) -> bool:
    """Tell a Cornet or a Sesquialtera, which carry a tune, from a chorus mixture.

    It is of flute tone, or has the unison in it from end to end, or is of at most two ranks with a
    third among them (common practice, no source).
    """
    zones = composition_of(stop)
    if not zones:
        return False
    lengths = [zone.lengths for zone in zones]
    return (
        stop.family is Family.FLUTE
        or all(UNISON in zone for zone in lengths)
        or all(len(zone) <= 2 and any(map(is_third, zone)) for zone in lengths)
    )


def is_chorus_mixture(stop: Stop) -> bool:
    """Tell whether it is a compound stop made to crown a chorus."""
    return is_compound(stop) and not is_solo_compound(stop)


def is_third(length: Fraction) -> bool:
    """Tell whether a length sounds a third above some octave of the unison."""
    return length.denominator % _THIRD == 0 and is_octave(length * _THIRD)


def is_mutation(stop: Stop) -> bool:
    """Tell whether it is a single off-unison rank: a twelfth, a tierce."""
    return not is_compound(stop) and any(
        not is_octave(length) for zone in pitches_of(stop) for length in zone.lengths
    )


def is_chorus_reed(stop: Stop) -> bool:
    """Tell whether it is a reed of full length: a trumpet, a clarion, a posaune."""
    return stop.family is Family.REED and stop.construction is Construction.FULL_LENGTH


def is_principal(stop: Stop) -> bool:
    """Tell whether it is one rank of the principal chorus; a rank tuned to beat is not."""
    return stop.family is Family.PRINCIPAL and not stop.is_undulating and not is_compound(stop)


def chorus_stops(stops: Iterable[Stop]) -> tuple[Stop, ...]:
    """Give the stops that make a full chorus of what sounds, each once.

    Chorus mixtures, full-length reeds, and the principals where they are of two pitches or more.
    """
    given = tuple(dict.fromkeys(stops))
    principals = {stop.length for stop in given if is_principal(stop)}
    return tuple(
        stop
        for stop in given
        if is_chorus_mixture(stop)
        or is_chorus_reed(stop)
        or (len(principals) > 1 and is_principal(stop))
    )
