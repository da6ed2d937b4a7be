"""Something is drawn that the organ does not have.

Why it matters: a stop that was taken off the organ's list, or given another id, stays drawn in the
registrations that used it. It sounds nothing, and what was meant is missing. Strike it out, and
draw what takes its place.
"""

from collections.abc import Iterator

from registrations.checks.atcue import AtCue
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import listed

NAME, LEVEL, SUBJECT = "stop-not-on-organ", Level.FAULT, Subject.CHANGES
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "“great/tuba-8” is drawn, of an organ from which the Tuba was taken"


def check(at: AtCue) -> Iterator[Finding]:
    """Find the drawn ids that no control of the organ has."""
    lost = tuple(sorted(at.change.combination.drawn - at.organ.control_ids()))
    if lost:
        yield Finding(
            NAME,
            LEVEL,
            f"{listed(f'“{one}”' for one in lost)} {'is' if len(lost) == 1 else 'are'} drawn here "
            "but not on this organ.",
            Evidence(stops=lost),
        )
