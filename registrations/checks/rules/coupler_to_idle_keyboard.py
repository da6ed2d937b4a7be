"""A coupler carries stops to a keyboard that nobody plays.

Why it matters: a coupler changes only what the keyboard it leads to sounds. With no hand and no
foot there nothing is gained, and the next hand that comes to that keyboard finds stops that it did
not ask for. It is worth a look: perhaps the coupler is meant for later, perhaps another was meant.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import stops_words, the

NAME, LEVEL, SUBJECT = "coupler-to-idle-keyboard", Level.ADVICE, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "Both hands on the Swell (Oboe 8); Swell to Great drawn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the couplers that carry stops, and none to a played keyboard; without hands, nothing."""
    if not scene.combination.hands:
        return
    played = {one.id for one in scene.played}
    for coupler in scene.couplers:
        carried = [reach for reach in scene.reaches if coupler.id in reach.via]
        if not carried or any(reach.keyboard in played for reach in carried):
            continue
        stops = tuple(dict.fromkeys(reach.stop for reach in carried))
        keyboard = scene.organ.keyboard(coupler.target)
        yield Finding(
            NAME,
            LEVEL,
            f"{coupler.name} brings {stops_words(stops)} to {the(keyboard.name)}, "
            "which nobody plays.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                couplers=(coupler.id,),
            ),
        )
