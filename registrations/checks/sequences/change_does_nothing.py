"""A change sets what is set already.

Why it matters: nothing moves, nobody plays elsewhere, and nothing is noted: the player turns to a
cue at which there is nothing to do. It may be meant, as a reminder that a verse goes on like the
last. If it is not, something was forgotten here.
"""

from collections.abc import Iterator

from registrations.checks.atcue import AtCue
from registrations.checks.findings import Finding, Level, Subject
from registrations.checks.sources import COMMON_PRACTICE

NAME, LEVEL, SUBJECT = "change-does-nothing", Level.ADVICE, Subject.CHANGES
SOURCES = (COMMON_PRACTICE,)
EXAMPLE = "Verse 3 draws what verse 2 drew, with the same hands on the same keyboards"


def check(at: AtCue) -> Iterator[Finding]:
    """Find a change that has combination, hands, texture and note of the one before."""
    before, change = at.before, at.change
    if before is None or (before.combination, before.music, before.note) != (
        change.combination,
        change.music,
        change.note,
    ):
        return
    yield Finding(
        NAME,
        LEVEL,
        f"The change before has set all this already ({before.cue}). "
        "If it is meant to go on so, all is well.",
    )
