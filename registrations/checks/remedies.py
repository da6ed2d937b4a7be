"""Remedies: the single moves that clear a finding and raise no other."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from instruments.organ import Division, Organ, Stop
from instruments.pipework import pitches_of
from instruments.pitch import cents
from registrations.checks import RULES, run
from registrations.checks.findings import Finding, Level, Remedy
from registrations.checks.scene import Scene

_SEVERITY = {level: place for place, level in enumerate(Level)}


@dataclass(frozen=True, slots=True)
class _Controls:
    """Where the stops of an organ stand, by id."""

    stops: dict[str, tuple[Division, Stop]]
    couplers: frozenset[str]


def remedies(
    scene: Scene, findings: tuple[Finding, ...] | None = None
) -> dict[Finding, tuple[Remedy, ...]]:
    """Give, for each finding, every single move that clears it and raises none, the best first.

    A move draws or puts in one stop, coupler or tremulant; each is tried once. One that silences
    the whole organ is no help and left out. ``findings`` are the scene’s, if they are known.

    The order: what the finding itself is about, when it is a coupler or a tremulant; then moves in
    the division it is found in; stops before couplers; drawing before putting in; the pitch
    nearest to the lengths in evidence; the tone of the stops in evidence; console order.
    """
    before = run(scene) if findings is None else findings
    cleared: dict[Finding, list[Remedy]] = {finding: [] for finding in before}
    for move in _moves(scene) if before else ():
        combination = scene.combination.moved(move.draw, move.put_in)
        trial = Scene(scene.organ, combination, scene.music, before=scene)
        if scene.reaches and not trial.reaches:
            continue
        gone = _gone(before, trial)
        # Most moves clear nothing, and then the other rules need not be asked.
        if gone and not any(_is_new(finding, before) for finding in run(trial)):
            for finding in gone:
                cleared[finding].append(move)
    controls = _controls(scene.organ)
    return {
        finding: tuple(sorted(moves, key=lambda move: _rank(finding, move, controls)))
        for finding, moves in cleared.items()
    }


def _gone(before: tuple[Finding, ...], trial: Scene) -> list[Finding]:
    """Give the findings that their own rules make no more, nor anything akin to them."""
    named = {finding.rule for finding in before}
    after = [found for rule in RULES if rule.NAME in named for found in rule.check(trial)]
    return [one for one in before if not any(_akin(one, other) for other in after)]


def _moves(scene: Scene) -> Iterator[Remedy]:
    """Give every single move, in console order: stops, couplers, tremulants."""
    organ, drawn = scene.organ, scene.combination.drawn
    controls = [stop.id for _, stop in organ.stops()]
    controls += [one.id for one in organ.couplers]
    controls += [one.id for _, one in organ.tremulants()]
    for control in controls:
        moved = frozenset([control])
        yield Remedy(put_in=moved) if control in drawn else Remedy(draw=moved)


def _akin(one: Finding, other: Finding) -> bool:
    """Tell whether two findings say the same: one rule, one place, about a thing in common."""
    things, others = _things(one), _things(other)
    return (
        one.rule == other.rule
        and one.evidence.keyboards == other.evidence.keyboards
        and (bool(things & others) or things == others)
    )


def _things(finding: Finding) -> frozenset[str]:
    evidence = finding.evidence
    return frozenset((*evidence.stops, *evidence.couplers, *evidence.tremulants))


def _is_new(finding: Finding, before: Iterable[Finding]) -> bool:
    """Tell whether nothing said the same before, or said it less severely."""
    return not any(
        _akin(finding, other) and _SEVERITY[other.level] <= _SEVERITY[finding.level]
        for other in before
    )


def _controls(organ: Organ) -> _Controls:
    return _Controls(
        {stop.id: (division, stop) for division, stop in organ.stops()},
        frozenset(one.id for one in organ.couplers),
    )


def _rank(
    finding: Finding, move: Remedy, controls: _Controls
) -> tuple[bool, bool, int, bool, float, bool]:
    """Give the place of a move among a finding's remedies; smaller is better."""
    evidence = finding.evidence
    (control,) = move.draw | move.put_in
    named = control in (*evidence.couplers, *evidence.tremulants)
    if control not in controls.stops:
        kind = 1 if control in controls.couplers else 2
        return not named, True, kind, not move.draw, 0.0, False
    division, stop = controls.stops[control]
    found = [controls.stops[one] for one in evidence.stops]
    own = division.keyboard in evidence.keyboards or division in [one for one, _ in found]
    alike = stop.family in [other.family for _, other in found]
    distance = _distance(stop, evidence.lengths)
    return True, not own, 0, not move.draw, distance, not alike


def _distance(stop: Stop, lengths: tuple[Fraction, ...]) -> float:
    """Give the cents from a stop's pitches to the nearest of some lengths."""
    pitches = {length for zone in pitches_of(stop) for length in zone.lengths}
    return min(
        (abs(cents(pitch) - cents(length)) for pitch in pitches for length in lengths), default=0.0
    )
