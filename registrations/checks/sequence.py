"""Sequence: what a good teacher would say about changes that follow one another."""

from collections.abc import Iterator
from itertools import chain
from typing import Protocol

from registrations.checks import in_order
from registrations.checks.atcue import MOST_BY_HAND, AtCue
from registrations.checks.findings import Finding, Level, Source, Subject
from registrations.checks.sequences import (
    change_does_nothing,
    stop_not_on_organ,
    too_many_moves,
)
from registrations.registration import Registration


class SequenceRule(Protocol):
    """A rule's module, as those of ``RULES`` are; it looks at a change and the one before it."""

    @property
    def NAME(self) -> str: ...  # noqa: D102, N802
    @property
    def LEVEL(self) -> Level: ...  # noqa: D102, N802
    @property
    def SUBJECT(self) -> Subject: ...  # noqa: D102, N802
    @property
    def SOURCES(self) -> tuple[Source, ...]: ...  # noqa: D102, N802
    @property
    def EXAMPLE(self) -> str: ...  # noqa: D102, N802
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
