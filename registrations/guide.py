"""Guide: every stop of an organ, and what it goes with on that very organ.

What goes together is worked out by the checks: combinations are put to them, names never are.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, combinations

from instruments.organ import Coupler, Division, Organ, Stop
from registrations.checks import run
from registrations.checks.findings import Finding, Level
from registrations.checks.scene import Scene
from registrations.combination import Combination
from registrations.ground import Ground, Place, coupler_to, drawn_at, grounds_of, place_of, weight
from registrations.guidewords import reason_of


@dataclass(frozen=True, slots=True)
class Companion:
    """A stop beside another, with what it needs besides and the coupler that brings it."""

    division: Division
    stop: Stop
    needs: tuple[Stop, ...] = ()
    coupler: Coupler | None = None


@dataclass(frozen=True, slots=True)
class Clash:
    """A companion that draws a finding: the rule, what it says here, and why in one sentence."""

    companion: Companion
    rule: str
    level: Level
    message: str
    reason: str


@dataclass(frozen=True, slots=True)
class GuideEntry:
    """One stop on its organ; ``place`` is None where no keyboard reaches it.

    ``good_with`` adds no finding, ``care`` a piece of advice, ``avoid`` a warning or a fault.
    """

    division: Division
    stop: Stop
    place: Place | None
    ground: Ground
    good_with: tuple[Companion, ...] = ()
    care: tuple[Clash, ...] = ()
    avoid: tuple[Clash, ...] = ()


@lru_cache(maxsize=8)
def guide(organ: Organ) -> tuple[GuideEntry, ...]:
    """Give the guide of an organ, a stop after the other in console order; kept by value."""
    grounds = grounds_of(organ)
    return tuple(_entry(organ, division, stop, grounds) for division, stop in organ.stops())


@lru_cache(maxsize=256)
def entry_of(organ: Organ, stop_id: str) -> GuideEntry:
    """Give the guide's entry for one stop; KeyError where the organ has no such stop."""
    for division, stop in organ.stops():
        if stop.id == stop_id:
            return _entry(organ, division, stop, grounds_of(organ))
    raise KeyError(stop_id)


def combination_of(entry: GuideEntry, companion: Companion | None = None) -> Combination:
    """Give the combination an entry speaks of: the stop on its ground, and a companion to it."""
    return _beside(entry.place, (entry.stop, *entry.ground.needs), companion)


def _beside(
    place: Place | None, base: tuple[Stop, ...], companion: Companion | None
) -> Combination:
    if companion is None:
        return drawn_at(place, base)
    return drawn_at(place, (*base, companion.stop, *companion.needs), (companion.coupler,))


def _entry(
    organ: Organ, division: Division, stop: Stop, grounds: Mapping[str, Ground]
) -> GuideEntry:
    place, ground = place_of(organ, division), grounds[stop.id]
    if place is None:
        return GuideEntry(division, stop, None, ground)
    base = (stop, *ground.needs)
    known = frozenset(map(_saying, ground.still))
    tried = [
        _tried(organ, place, base, known, Companion(other, one, grounds[one.id].needs, coupler))
        for other, coupler in _within_reach(organ, place, division)
        for one in other.stops
        if one not in base
    ]
    clashes = [one for one in tried if isinstance(one, Clash)]
    return GuideEntry(
        division,
        stop,
        place,
        ground,
        good_with=tuple(one for one in tried if isinstance(one, Companion)),
        care=tuple(one for one in clashes if one.level is Level.ADVICE),
        avoid=tuple(one for one in clashes if one.level is not Level.ADVICE),
    )


def _within_reach(
    organ: Organ, place: Place, division: Division
) -> Iterator[tuple[Division, Coupler | None]]:
    """Give the divisions that one keyboard plays, each with its coupler: the stop's own first."""
    yield division, place.coupler
    for other in organ.divisions:
        if other is division:
            continue
        coupler = coupler_to(organ, other, place.keyboard)
        if coupler is not None or other.keyboard == place.keyboard.id:
            yield other, None if other.keyboard == place.keyboard.id else coupler


def _tried(
    organ: Organ,
    place: Place,
    base: tuple[Stop, ...],
    known: frozenset[tuple[str, Level]],
    companion: Companion,
) -> Companion | Clash:
    """Give the companion with the least it needs beside the base; a clash where nothing helps."""
    wanted = [one for one in companion.needs if one not in base]
    trials: list[tuple[tuple[int, int], int, Companion, Finding]] = []
    for needs in chain.from_iterable(combinations(wanted, n) for n in range(len(wanted) + 1)):
        trial = Companion(companion.division, companion.stop, needs, companion.coupler)
        findings = run(Scene(organ, _beside(place, base, trial)))
        found = [one for one in findings if _saying(one) not in known]
        if not found:
            return trial
        trials.append((weight(found), len(trials), trial, found[0]))
    _, _, trial, first = min(trials, key=lambda one: one[:2])
    return Clash(trial, first.rule, first.level, first.message, reason_of(first.rule))


def _saying(finding: Finding) -> tuple[str, Level]:
    return finding.rule, finding.level
