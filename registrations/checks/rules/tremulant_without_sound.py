"""A tremulant is drawn and nothing of its division sounds.

Why it matters: a tremulant shakes the wind of its own division and of no other. With no stop of
that division sounding anywhere it does nothing now, and waits for the next stop that is drawn
there. Perhaps the tremulant of another division was meant.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import the

NAME, LEVEL, SUBJECT = "tremulant-without-sound", Level.ADVICE, Subject.ACCESSORIES
SOURCES = (BY_CONSTRUCTION, COMMON_PRACTICE)
EXAMPLE = "Great: Open Diapason 8; Swell: Tremulant and no stop"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the drawn tremulants that shake nothing; with no stop at all that is another fault."""
    sounding = {reach.division for reach in scene.reaches}
    for division, tremulant in scene.tremulants if scene.stops else ():
        if division.id not in sounding:
            yield Finding(
                NAME,
                LEVEL,
                f"The tremulant of {the(division.name)} is drawn, and nothing of "
                f"{the(division.name)} sounds.",
                Evidence(
                    keyboards=tuple(
                        one.id for one in scene.organ.keyboards if one.id == division.keyboard
                    ),
                    tremulants=(tremulant.id,),
                ),
            )
