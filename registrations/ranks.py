"""Ranks: rank by rank, which pipes a keyboard's keys open, and at what pitch they are tuned."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from instruments.mixtures import lengths_at
from instruments.organ import Organ, Stop
from instruments.pipework import Pipework, composition_of, pipework, pitches_of, ranks
from instruments.pitch import UNISON, harmonic, is_octave, semitones
from instruments.spectra import MODEL, Tone, ToneModel, tone_of
from instruments.temperament import EQUAL, find_temperament, frequency
from registrations.combination import Combination
from registrations.sounding import Reach, heard, reaches

#: How far above its partner an undulating rank is taken to be tuned. From memory: a slow beat, 1.5
#: a second at c1. Most are sharp (G. L. Miller, The Recent Revolution in Organ Building, 1913).
UNDULATING_CENTS = 10.0


@dataclass(frozen=True, slots=True)
class RankSpan:
    """One rank of a stop over the played keys ``low`` to ``high``.

    Key ``k`` sounds pipe ``k + offset`` of ``row``. The pipe has the hertz of an 8-foot stop at key
    ``k + step``, times ``place``; ``length`` is what that comes to from the played key, in feet.
    """

    stop: str
    length: Fraction
    row: str
    offset: int
    step: int
    place: float
    tone: Tone
    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Tuning:
    """How the pipes of an organ are tuned.

    ``octave`` are the hertz of the keys C to B of an 8-foot stop. By row of pipes: ``lengths`` at
    which they are tuned, their ``tones``, and by what factor they are tuned ``apart`` on purpose.
    """

    octave: tuple[float, ...]
    pipework: Pipework
    lengths: dict[str, Fraction]
    tones: dict[str, Tone | None]
    apart: dict[str, float]

    def hertz(self, key: int) -> float:
        """Give the hertz of an 8-foot stop at a key; octaves are exact."""
        octave, step = divmod(key, 12)
        return math.ldexp(self.octave[step], octave)


@lru_cache(maxsize=64)
def tuning(organ: Organ, model: ToneModel = MODEL) -> Tuning:
    """Tune an organ: a temperament that is not one of ours is taken as equal.

    A row of pipes that any unison or octave stop uses is tuned by the keys, as a unison is; one
    that only mutations use is tuned pure to the key of its lender.
    """
    temperament = find_temperament(organ.temperament) or EQUAL
    names = ranks(organ)
    lengths: dict[str, Fraction] = {}
    tones: dict[str, Tone | None] = {}
    apart: dict[str, float] = {}
    stops = [stop for _, stop in organ.stops()]
    for stop in sorted(stops, key=lambda one: one.borrowed_from is not None):
        row, length = names[stop.id], stop.length
        tones.setdefault(row, tone_of(stop, model))
        apart.setdefault(row, 2 ** (UNDULATING_CENTS / 1200) if stop.is_undulating else 1.0)
        if length is not None and not composition_of(stop):
            lengths.setdefault(row, length)
            if is_octave(length):
                lengths[row] = UNISON
    return Tuning(
        tuple(frequency(key, UNISON, organ.pitch_hz, temperament) for key in range(12)),
        pipework(organ),
        lengths,
        tones,
        apart,
    )


def rank_spans(
    organ: Organ, combination: Combination, keyboard: str, tuned: Tuning
) -> Iterator[RankSpan]:
    """Give the ranks that a keyboard sounds; a pipe that is reached twice is given twice.

    Stops of no pitch, and of no tone in the model, are left out.

    Raises:
        KeyError: the organ has no such keyboard.
    """
    played = organ.keyboard(keyboard).id
    found = reaches(organ, combination)
    yield from ranks_of((one for one in found if one.keyboard == played), tuned)


def ranks_of(found: Iterable[Reach], tuned: Tuning) -> Iterator[RankSpan]:
    """Give the ranks of reaches that are known already, as :func:`rank_spans` does."""
    for reach in found:
        for low, high in _zones(reach):
            yield from _ranks(reach, tuned, low, high)


def _zones(reach: Reach) -> Iterator[tuple[int, int]]:
    starts = [zone.start - reach.shift for zone in composition_of(reach.stop)]
    inside = {start for start in starts if reach.low < start <= reach.high}
    for low, above in pairwise(sorted({reach.low, *inside, reach.high + 1})):
        yield low, above - 1


def _ranks(reach: Reach, tuned: Tuning, low: int, high: int) -> Iterator[RankSpan]:
    stop, chest_key = reach.stop, low + reach.shift
    row = tuned.pipework.ranks[stop.id]
    tone = tuned.tones[row]
    pitches = _pitches(stop, tuned, chest_key)
    if tone is None or not pitches:
        return
    for pipe, pitch in zip(tuned.pipework.pipes(stop, chest_key), pitches, strict=True):
        # An undulating stop of several ranks holds its own partner, the first of them.
        at_pitch = stop.ranks > 1 and pipe.rank == row
        yield RankSpan(
            stop=stop.id,
            length=heard(pitch.length, reach.shift),
            row=pipe.rank,
            offset=pipe.number - low,
            step=reach.shift + pitch.step,
            place=float(harmonic(pitch.tuned_at)) * (1.0 if at_pitch else tuned.apart[row]),
            tone=tone,
            low=low,
            high=high,
        )


@dataclass(frozen=True, slots=True)
class _Pitch:
    """A rank's length; its pipe has the pitch of ``tuned_at`` at the key ``step`` further up."""

    length: Fraction
    step: int
    tuned_at: Fraction


def _pitches(stop: Stop, tuned: Tuning, key: int) -> list[_Pitch]:
    lengths = lengths_at(pitches_of(stop), key)
    if composition_of(stop):
        return [_Pitch(length, 0, length) for length in lengths]
    return [
        _Pitch(length, semitones(length) - semitones(at), at)
        for length in lengths * stop.ranks
        for at in (tuned.lengths[tuned.pipework.ranks[stop.id]],)
    ]
