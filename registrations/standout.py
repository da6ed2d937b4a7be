"""Standing out: how far a rank rises above the partials on either side of it.

The ear takes a row of partials for one tone as long as their levels follow a smooth line. A rank
blends when its own pitch lies on the line of what sounds anyway, and is heard as a note by itself
when it rises above it. For a rank whose pipe speaks at ``m`` hertz:

* ``L`` is the level at ``m``: all power within a quarter tone of it, the rank's own with it;
* the neighbours are all other partials (not those of this pipe) up to a pure fifth below and above
  ``m``, an octave for a rank at the unison or an octave of it, each with the power within a quarter
  tone of it; beyond the last neighbour, at the edge, is silence (a floor, see ``FLOOR_DB``);
* ``E`` is the height at ``m`` of the lowest arch over the neighbours: of all straight lines (dB
  against the logarithm of frequency) from a neighbour below to one above, the highest;
* the stand-out is ``L - E`` in dB.

A fifth, because that is the widest step from a mutation to its neighbours in the harmonic series
(3 to 2); the arch, because a strong neighbour hides a weak one beside it, as between the odd
partials of a stopped pipe. Only the pipe's own pitch is judged: its overtones follow it. The lowest
rank of all has nothing below and always stands out: it is the note itself. The partials are a
model's, of eight a pipe, so that ranks far above all others seem barer than they are.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from instruments.organ import Organ
from instruments.pitch import is_octave
from instruments.spectra import MODEL, ToneModel, partial_powers
from registrations.combination import Combination
from registrations.ranks import RankSpan, Tuning, rank_spans, tuning
from registrations.spectrum import Floats

#: A rank that stands out less than this blends. Ten decibels are heard as twice as loud: S. S.
#: Stevens, The measurement of loudness, J. Acoust. Soc. Am. 27, 1955, 815, from memory. That a rank
#: is heard by itself from there on is our choice, no source.
BLENDS_BELOW_DB = 10.0
#: So far below the strongest partial is silence; assumed.
FLOOR_DB = -60.0

#: In octaves: what counts as one place, and how far from it the neighbours are.
_PLACE = 50 / 1200
_FIFTH = float(np.log2(3 / 2))
_OCTAVE = 1.0


@dataclass(frozen=True, slots=True)
class StandOut:
    """A rank at the length it is heard at, its hertz, and the dB it rises above its neighbours."""

    stop: str
    length: Fraction
    hertz: float
    decibels: float

    @property
    def blends(self) -> bool:
        """Whether it is heard as part of the tone and not by itself."""
        return self.decibels < BLENDS_BELOW_DB


def stand_outs(
    organ: Organ, combination: Combination, keyboard: str, key: int, model: ToneModel = MODEL
) -> tuple[StandOut, ...]:
    """Give how far each rank that a key sounds stands out, lowest pitch first.

    Raises:
        KeyError: the organ has no such keyboard.
    """
    tuned = tuning(organ, model)
    return stand_outs_of(rank_spans(organ, combination, keyboard, tuned), tuned, key)


def stand_outs_of(
    found: Iterable[RankSpan], tuned: Tuning, key: int, of: Fraction | None = None
) -> tuple[StandOut, ...]:
    """Give how far ranks that are known already stand out at a key: all, or those ``of`` a length.

    ``found`` are all ranks of one keyboard that sound there.
    """
    pipes = {
        (one.row, one.offset): (tuned.hertz(key + one.step) * one.place, one)
        for one in found
        if one.low <= key <= one.high
    }
    ordered = sorted(pipes.values(), key=lambda pipe: (pipe[0], pipe[1].stop))
    partials = _partials(ordered)
    strongest = _powers_about(partials[0], partials[0], partials[1]).max(initial=0.0)
    floor = strongest * 10 ** (FLOOR_DB / 10)
    wanted = [one for one in enumerate(ordered) if of in (None, one[1][1].length)]
    # Equal ranks stand out equally: it is worked out for one of them.
    numbers = {(hertz, one.length, one.tone): pipe for pipe, (hertz, one) in wanted}
    above = {
        kind: _above(kind[0], pipe, kind[1], partials, floor) for kind, pipe in numbers.items()
    }
    return tuple(
        StandOut(one.stop, one.length, hertz, above[hertz, one.length, one.tone])
        for _, (hertz, one) in wanted
    )


def stand_out(
    organ: Organ,
    combination: Combination,
    keyboard: str,
    key: int,
    stop: str,
    model: ToneModel = MODEL,
) -> float | None:
    """Give the dB by which a stop stands out at a key: its rank that does most.

    None where it does not sound. A pipe that several stops share counts for one of them.

    Raises:
        KeyError: the organ has no such keyboard.
    """
    found = stand_outs(organ, combination, keyboard, key, model)
    return max((one.decibels for one in found if one.stop == stop), default=None)


def _partials(pipes: list[tuple[float, RankSpan]]) -> Floats:
    """Give all partials, a column each, lowest first: log2 of hertz, power, number of the pipe."""
    found = [
        (hertz * harmonic, power, pipe)
        for pipe, (hertz, one) in enumerate(pipes)
        for harmonic, power in enumerate(partial_powers(one.tone), start=1)
    ]
    table = np.array(sorted(found)).reshape(-1, 3).T
    return np.vstack([np.log2(table[0]), table[1:]])


def _above(hertz: float, pipe: int, length: Fraction, partials: Floats, floor: float) -> float:
    places, powers, owners = partials
    distances = places - np.log2(hertz)
    here = powers[np.abs(distances) < _PLACE].sum()
    edge = (_OCTAVE if is_octave(length) else _FIFTH) + _PLACE
    near = (owners != pipe) & (np.abs(distances) >= _PLACE) & (np.abs(distances) < edge)
    others = np.where(owners == pipe, 0.0, powers)
    about = _powers_about(places[near], places, others)
    steps = np.concatenate([[-edge], distances[near], [edge]])
    levels = 10 * np.log10(np.maximum(np.concatenate([[0.0], about, [0.0]]), floor))
    return float(10 * np.log10(here) - _arch(steps, levels))


def _powers_about(centres: Floats, places: Floats, powers: Floats) -> Floats:
    """Give the power within a quarter tone of each centre."""
    sums = np.concatenate([[0.0], np.cumsum(powers)])
    above, below = (np.searchsorted(places, centres + side * _PLACE) for side in (1, -1))
    found: Floats = sums[above] - sums[below]
    return found


def _arch(steps: Floats, levels: Floats) -> float:
    """Give the height over 0 of the lowest arch over points on both sides of it."""
    below, above = steps < 0, steps > 0
    left, right = steps[below][:, None], steps[above]
    low, high = levels[below][:, None], levels[above]
    return float((low + (high - low) * -left / (right - left)).max())
