"""A coupler brings the accompaniment's stops onto the solo keyboard.

Why it matters: the tune then sounds with the colour of the accompaniment mixed into it. It is
often wanted, to give a thin solo body; it also blurs the contrast between the two keyboards, and
each stop that is added to the accompaniment later thickens the solo as well.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards, carried, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import brings, stops_words, the

NAME, LEVEL, SUBJECT = "solo-carries-accompaniment", Level.ADVICE, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION, COMMON_PRACTICE)
EXAMPLE = "Solo on the Great (Trumpet 8), left hand on the Swell, Swell to Great drawn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find what couplers bring to the solo from the divisions at home under other hands."""
    solo = solo_keyboard(scene)
    if solo is None:
        return
    accompanying = {one.id for one in accompanying_keyboards(scene)}
    homes = frozenset(one.id for one in scene.organ.divisions if one.keyboard in accompanying)
    found = carried(scene, solo, homes)
    if not found:
        return
    via = tuple(dict.fromkeys(coupler for reach in found for coupler in reach.via))
    stops = tuple(dict.fromkeys(reach.stop for reach in found))
    yield Finding(
        NAME,
        LEVEL,
        f"{brings(scene.couplers, via)} the accompaniment’s {stops_words(stops)} to "
        f"{the(solo.name)}, where the tune is played.",
        Evidence(keyboards=(solo.id,), stops=tuple(stop.id for stop in stops), couplers=via),
    )
