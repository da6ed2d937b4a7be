"""Review: what the checks say of whole registrations."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from instruments.organ import Organ
from registrations.checks import in_order, run
from registrations.checks.atcue import AtCue
from registrations.checks.findings import Finding, Level
from registrations.checks.scene import Scene
from registrations.checks.sequence import run_change
from registrations.combination import Combination, Music
from registrations.registration import Registration


@lru_cache(maxsize=4096)
def findings_of(organ: Organ, combination: Combination, music: Music) -> tuple[Finding, ...]:
    """Give the findings of a combination; the same values are worked out once."""
    return run(Scene(organ, combination, music))


def review(registration: Registration) -> tuple[tuple[Finding, ...], ...]:
    """Give the findings of each change of a registration, in order.

    Of what is drawn, and of how the changes follow one another; faults come first.
    """
    return tuple(findings_at(registration, place) for place in range(len(registration.changes)))


def findings_at(registration: Registration, place: int) -> tuple[Finding, ...]:
    """Give the findings of one change of a registration, counted from 0, as ``review`` does."""
    organ, change = registration.organ, registration.changes[place]
    before = registration.changes[place - 1] if place else None
    of_order = run_change(AtCue(organ, change, before))
    return in_order((*of_order, *findings_of(organ, change.combination, change.music)))


@dataclass(frozen=True, slots=True)
class Tally:
    """How many findings there are of each level."""

    faults: int = 0
    warnings: int = 0
    advice: int = 0

    def __bool__(self) -> bool:
        return bool(self.faults or self.warnings or self.advice)


def tally(findings: Iterable[Finding]) -> Tally:
    """Count findings by level."""
    counts = Counter(finding.level for finding in findings)
    return Tally(counts[Level.FAULT], counts[Level.WARNING], counts[Level.ADVICE])
