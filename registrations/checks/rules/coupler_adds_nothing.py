"""Every pipe that a coupler brings speaks there already.

Why it matters: a pipe that is asked for twice speaks once. Where another coupler brings the same
stops at the same pitch, or an octave coupler asks for pipes that a 4 of the same rank has opened,
nothing is added. It looks like more on the console, and it is not louder.
"""

from collections.abc import Iterator

from instruments.organ import Coupler, Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import stops_words, the
from registrations.sounding import Reach, Row, rows_opened

NAME, LEVEL, SUBJECT = "coupler-adds-nothing", Level.ADVICE, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "Great to Choir, Swell to Great and Swell to Choir, on an organ whose keys move along"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the couplers that carry stops to played keyboards, and to none of them a new pipe."""
    for coupler in scene.couplers:
        reached = [(one, *_parted(scene, coupler, one)) for one in scene.played]
        told = [(keyboard, brought, rest) for keyboard, brought, rest in reached if brought]
        if not told or any(_adds(scene, brought, rest) for _, brought, rest in told):
            continue
        keyboard, brought, _ = told[0]
        stops = tuple(dict.fromkeys(reach.stop for reach in brought))
        yield Finding(
            NAME,
            LEVEL,
            f"{coupler.name} adds nothing: all it brings of {stops_words(stops)} "
            f"sounds on {the(keyboard.name)} without it.",
            Evidence(
                keyboards=tuple(one.id for one, _, _ in told),
                stops=tuple(stop.id for stop in stops),
                couplers=(coupler.id,),
            ),
        )


def _parted(scene: Scene, coupler: Coupler, keyboard: Keyboard) -> tuple[list[Reach], list[Reach]]:
    """Give what comes to a keyboard through a coupler, and what comes otherwise."""
    brought: list[Reach] = []
    rest: list[Reach] = []
    for reach in scene.reached_on(keyboard.id):
        (brought if coupler.id in reach.via else rest).append(reach)
    return brought, rest


def _adds(scene: Scene, brought: list[Reach], rest: list[Reach]) -> bool:
    """Tell whether any key has a pipe among what is brought that it does not have otherwise."""
    known: dict[Row, set[int]] = {}
    for reach in rest:
        for row in rows_opened(reach, scene.ranks):
            known.setdefault(row, set()).update(range(reach.low, reach.high + 1))
    return any(
        not known.get(row, set()).issuperset(range(reach.low, reach.high + 1))
        for reach in brought
        for row in rows_opened(reach, scene.ranks)
    )
