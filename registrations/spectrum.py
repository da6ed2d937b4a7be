"""Spectrum: the partials that sound when keys are played, how loud and how bright they are.

Frequencies are exact for the organ's pitch and temperament; powers are those of a model
(instruments/spectra.py), where an Open Diapason has 1. Powers add: pipes that are not locked to
one another are incoherent, so that two equal ranks give 3 dB more than one, and ten 10 dB.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from instruments.mixtures import lengths_at
from instruments.organ import Organ
from instruments.pipework import pitches_of
from instruments.spectra import MODEL, Tone, ToneModel, partial_powers, tone_of
from registrations.combination import Combination
from registrations.ranks import RankSpan, Tuning, rank_spans, tuning
from registrations.sounding import Reach, Row, rows_opened

Floats = NDArray[np.float64]

#: The highest partial that is counted, in hertz: the usual limit of hearing, no source.
HIGHEST_HZ = 20_000.0
#: Partials that are nearer than this (as a ratio less 1) are one: far less than any beat.
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Spectrum:
    """Partials in hertz, lowest first, each once, with their powers (an Open Diapason has 1).

    ``unison`` is the hertz of an 8-foot stop at the lowest key played.
    """

    unison: float
    frequencies: tuple[float, ...]
    powers: tuple[float, ...]

    @property
    def power(self) -> float:
        """The power of all partials together."""
        return math.fsum(self.powers)

    @property
    def level(self) -> float:
        """The level of all partials together in dB against an Open Diapason; silence is -inf."""
        return 10 * math.log10(self.power) if self.powers else -math.inf

    @property
    def brightness(self) -> float:
        """The centre of the powers, counted in harmonics of the unison; 0 for silence.

        ``sum(power * frequency) / sum(power) / unison``: a pure 8-foot tone has 1, a pure 4 has 2.
        """
        if not self.powers:
            return 0.0
        pairs = zip(self.frequencies, self.powers, strict=True)
        return math.fsum(hertz * power for hertz, power in pairs) / self.power / self.unison


@dataclass(frozen=True, slots=True, eq=False)
class CompassSpectra:
    """The partials of each key of a keyboard: a row a key, a column a partial.

    ``frequencies`` are in hertz and ``powers`` 0 where a partial does not sound at a key; columns
    are in no order, and no two of them are one partial at every key.
    """

    keys: tuple[int, ...]
    unisons: Floats
    frequencies: Floats
    powers: Floats

    def at(self, key: int) -> Spectrum:
        """Give the spectrum of a key; ValueError when the keyboard does not have it."""
        row = self.keys.index(key)
        return merged(self.unisons[row], self.frequencies[row], self.powers[row])

    def levels(self) -> Floats:
        """Give the level of each key in dB against an Open Diapason; silence is -inf."""
        with np.errstate(divide="ignore"):
            return np.asarray(10 * np.log10(self.powers.sum(axis=1)))

    def brightness(self) -> Floats:
        """Give the brightness of each key as :attr:`Spectrum.brightness` has it."""
        whole = self.powers.sum(axis=1)
        centre = (self.powers * self.frequencies).sum(axis=1) / self.unisons
        found: Floats = np.divide(centre, whole, out=np.zeros_like(whole), where=whole > 0)
        return found


@dataclass(frozen=True, slots=True)
class Extremes:
    """The levels of an organ's softest and loudest sounds, in dB against an Open Diapason."""

    softest: float
    loudest: float


def spectrum(
    organ: Organ, combination: Combination, keyboard: str, *keys: int, model: ToneModel = MODEL
) -> Spectrum:
    """Give what sounds when keys of a keyboard are played together; a pipe speaks once.

    Keys that the keyboard does not have sound nothing.

    Raises:
        KeyError: the organ has no such keyboard.
        ValueError: no key is given.
    """
    tuned = tuning(organ, model)
    return spectrum_of(rank_spans(organ, combination, keyboard, tuned), tuned, *keys)


def spectrum_of(found: Iterable[RankSpan], tuned: Tuning, *keys: int) -> Spectrum:
    """Give what ranks that are known already sound when keys are played together.

    Raises:
        ValueError: no key is given.
    """
    sounding = {
        (one.row, key + one.offset): (tuned.hertz(key + one.step), one)
        for one in found
        for key in keys
        if one.low <= key <= one.high
    }
    partials = [
        (hertz * (one.place * number), power)
        for hertz, one in sounding.values()
        for number, power in enumerate(partial_powers(one.tone), start=1)
    ]
    table = np.array(partials, dtype=np.float64).reshape(-1, 2)
    return merged(tuned.hertz(min(keys)), table[:, 0], table[:, 1])


def compass_spectra(
    organ: Organ, combination: Combination, keyboard: str, model: ToneModel = MODEL
) -> CompassSpectra:
    """Give what each key of a keyboard sounds by itself, all at once.

    Raises:
        KeyError: the organ has no such keyboard.
    """
    tuned = tuning(organ, model)
    keys = organ.keyboard(keyboard).compass.keys()
    octaves = np.array([[tuned.hertz(key + step) for step in range(12)] for key in keys])
    counts = _counts(rank_spans(organ, combination, keyboard, tuned), keys)
    columns: dict[_Column, int] = {}
    shares: list[tuple[list[int], tuple[float, ...]]] = []
    for step, place, tone in counts:
        powers = partial_powers(tone)
        partials = [(step, place * number) for number in range(1, len(powers) + 1)]
        shares.append(([columns.setdefault(one, len(columns)) for one in partials], powers))
    weights = np.zeros((len(shares), len(columns)))
    for weight, (where, powers) in zip(weights, shares, strict=True):
        weight[where] = powers
    steps, places = zip(*columns, strict=True) if columns else ((), ())
    frequencies = octaves[:, list(steps)] * np.array(places)
    sounding = np.array(list(counts.values())).reshape(-1, len(keys))
    return CompassSpectra(
        keys=keys,
        unisons=octaves[:, 0],
        frequencies=frequencies,
        powers=np.where(frequencies <= HIGHEST_HZ, sounding.T @ weights, 0.0),
    )


#: A partial wherever it is played: the pitch class of its pipe above the key, and the factor.
_Column = tuple[int, float]


def _counts(
    found: Iterable[RankSpan], keys: tuple[int, ...]
) -> dict[tuple[int, float, Tone], Floats]:
    """Count, for each pitch and tone, the pipes that sound at each key; each pipe once."""
    played = np.array(keys)
    pipes: dict[tuple[str, int], tuple[RankSpan, NDArray[np.bool_]]] = {}
    for one in found:
        here = (played >= one.low) & (played <= one.high)
        _, before = pipes.get((one.row, one.offset), (one, np.False_))
        pipes[one.row, one.offset] = (one, here | before)
    counts: dict[tuple[int, float, Tone], Floats] = {}
    for one, here in pipes.values():
        octave, step = divmod(one.step, 12)
        kind = (step, math.ldexp(one.place, octave), one.tone)
        counts[kind] = counts.get(kind, np.zeros(len(keys))) + here
    return counts


def merged(unison: float, frequencies: Floats, powers: Floats) -> Spectrum:
    """Give partials as a spectrum: what is silent or past hearing left out, equal ones added."""
    heard = (powers > 0) & (frequencies <= HIGHEST_HZ)
    order = np.argsort(frequencies[heard], kind="stable")
    hertz, power = frequencies[heard][order], powers[heard][order]
    starts = np.flatnonzero(np.diff(hertz, prepend=0.0) > _SAME * hertz)
    return Spectrum(
        unison,
        tuple(hertz[starts].tolist()),
        tuple(np.add.reduceat(power, starts).tolist()) if starts.size else (),
    )


def level_of(found: Iterable[Reach], tuned: Tuning, key: int) -> float:
    """Give the level of one key as :attr:`Spectrum.level` does, without working out its partials.

    ``found`` are the reaches of one keyboard. What lies past hearing is counted, too: as far up
    as c1 it is less than a tenth of a dB.
    """
    pipes: dict[Row, float] = {}
    for reach in found:
        tone = tuned.tones[tuned.pipework.ranks[reach.stop.id]]
        if tone is not None and reach.low <= key <= reach.high:
            count = len(lengths_at(pitches_of(reach.stop), key + reach.shift))
            for row in rows_opened(reach, tuned.pipework.ranks):
                pipes[row] = math.fsum(partial_powers(tone)) * count
    whole = math.fsum(pipes.values())
    return 10 * math.log10(whole) if whole else -math.inf


@lru_cache(maxsize=64)
def extremes(organ: Organ, model: ToneModel = MODEL) -> Extremes | None:
    """Give the levels of the softest stop by itself and of all stops together, each once.

    None for an organ without a pitched stop. Swell boxes and octave couplers are not reckoned.
    """
    powers = [
        sum(partial_powers(tone)) * max(stop.ranks, len(pitches_of(stop)[0].lengths))
        for _, stop in organ.stops()
        if pitches_of(stop) and (tone := tone_of(stop, model)) is not None
    ]
    if not powers:
        return None
    return Extremes(10 * math.log10(min(powers)), 10 * math.log10(math.fsum(powers)))


def loudness(sound: Spectrum, between: Extremes | None) -> float:
    """Give where a sound lies, in dB, between an organ's extremes: 0 softest, 1 loudest.

    What is softer (silence) is 0, and what octave couplers bring beyond the loudest is 1.
    """
    if between is None or not sound.powers:
        return 0.0
    if between.softest == between.loudest:
        return 1.0
    share = (sound.level - between.softest) / (between.loudest - between.softest)
    return min(max(share, 0.0), 1.0)
