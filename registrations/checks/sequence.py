"""Sequence: what a good teacher would say about changes that follow one another."""

from collections.abc import Iterator
from itertools import chain
from typing import Protocol

from registrations.checks import in_order
from registrations.checks.atcue import MOST_BY_HAND, AtCue
from registrations.checks.explained import Explained
from registrations.checks.findings import Finding
from registrations.checks.sequences import (
    change_does_nothing,
    stop_not_on_organ,
    too_many_moves,
)
from registrations.registration import Registration


class SequenceRule(Explained, Protocol):
    """A rule's module that looks at a change and the one before it."""

    def check(self, at: AtCue) -> Iterator[Finding]: ...  # noqa: D102


#: In the order in which a reader meets them.
SEQUENCE_RULES: tuple[SequenceRule, ...] = (
    stop_not_on_organ,
    too_many_moves,
    change_does_nothing,
)


def run_registration(
    registration: Registration, most_by_hand: int = MOST_BY_HAND
) -> tuple[tuple[Finding, ...], ...]:
    """Give the findings of each change that the changes before it have a part in, in order."""
    organ, changes = registration.organ, registration.changes
    befores = chain([None], changes)
    return tuple(
        run_change(AtCue(organ, change, before, most_by_hand))
        for change, before in zip(changes, befores, strict=False)
    )


def run_change(at: AtCue) -> tuple[Finding, ...]:
    """Give the findings of one change where it stands: faults first, then warnings, then advice."""
    return in_order(finding for rule in SEQUENCE_RULES for finding in rule.check(at))
