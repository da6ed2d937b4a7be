"""Tryout: what a combination does on an organ, as plain values for a script to read."""

from typing import Any

from instruments.compass import key_name
from instruments.organ import Organ
from instruments.pitch import length_label
from registrations.checks import run
from registrations.checks.findings import Evidence, Finding, Remedy
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from registrations.combination import Combination, Music
from registrations.sounding import lengths_of


def tryout(organ: Organ, combination: Combination, music: Music) -> dict[str, Any]:
    """Give what sounds on every keyboard, the findings, and the remedies of each.

    Lengths are labels such as ``2 2/3`` and keys are named, so that it can be printed as JSON.
    """
    scene = Scene(organ, combination, music)
    findings = run(scene)
    helps = remedies(scene, findings)
    return {
        "keyboards": [
            {
                "id": keyboard.id,
                "sounds": bool(scene.reached_on(keyboard.id)),
                "lengths": [
                    length_label(length) for length in lengths_of(scene.spans_on(keyboard))
                ],
            }
            for keyboard in organ.keyboards
        ],
        "findings": [_finding(finding, helps[finding]) for finding in findings],
    }


def _finding(finding: Finding, helps: tuple[Remedy, ...]) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "level": finding.level.value,
        "message": finding.message,
        "evidence": evidence_values(finding.evidence),
        "remedies": [{"draw": sorted(one.draw), "put_in": sorted(one.put_in)} for one in helps],
    }


def evidence_values(evidence: Evidence) -> dict[str, Any]:
    """Give evidence as plain values: ids, key names, length labels, numbers by name."""
    return {
        "keyboards": list(evidence.keyboards),
        "stops": list(evidence.stops),
        "couplers": list(evidence.couplers),
        "tremulants": list(evidence.tremulants),
        "keys": None if evidence.keys is None else list(map(key_name, evidence.keys)),
        "lengths": list(map(length_label, evidence.lengths)),
        "numbers": dict(evidence.numbers),
    }
