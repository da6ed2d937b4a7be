"""Acceptance: a finding that is meant, and how it is known again.

An acceptance holds for a finding's rule and evidence together. When the evidence is no longer the
same, the finding comes back; when it is the same again, so is the acceptance.
"""

from collections.abc import Iterable
from dataclasses import fields
from hashlib import blake2b

from registrations.checks.findings import Finding
from registrations.registration import Registration

#: Digits of a measured number that count: less than them is not heard.
_DIGITS = 3


def fingerprint(finding: Finding) -> str:
    """Give 32 hexadecimal digits that are the same for the same rule and the same evidence.

    Ids, keys, lengths and numbers count, in any order of the ids; the sentence does not, so that
    other words for it change nothing.
    """
    evidence = finding.evidence
    parts = [
        f"{one.name}={_written(getattr(evidence, one.name))}"
        for one in fields(evidence)
        if getattr(evidence, one.name)
    ]
    return blake2b(";".join([finding.rule, *parts]).encode(), digest_size=16).hexdigest()


def _written(value: object) -> str:
    """Write evidence the same way wherever it is worked out."""
    if isinstance(value, tuple):
        if all(isinstance(one, str) for one in value):
            value = tuple(sorted(value))
        return f"({','.join(map(_written, value))})"
    return f"{value:.{_DIGITS}g}" if isinstance(value, float) else repr(value)


def still_open(
    registration: Registration, found: Iterable[tuple[Finding, ...]]
) -> tuple[Finding, ...]:
    """Give the findings that are not accepted; ``found`` has those of each change, in order."""
    return tuple(
        finding
        for change, findings in zip(registration.changes, found, strict=True)
        for finding in findings
        if fingerprint(finding) not in change.accepted
    )
