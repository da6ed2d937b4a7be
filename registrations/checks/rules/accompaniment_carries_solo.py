"""A coupler brings the solo stops under the accompanying hand.

Why it matters: a solo stands out because only the tune has its colour. When a coupler brings the
stops of the solo's division to the keyboard of the other hand as well, the accompaniment sounds
them too and the tune is lost in it. Put the coupler in, or change hands to keyboards that
are not coupled that way.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards, carried, divisions_at, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import brings, stops_words, the

NAME, LEVEL, SUBJECT = "accompaniment-carries-solo", Level.WARNING, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION, COMMON_PRACTICE)
EXAMPLE = "Solo on the Swell (Oboe 8), left hand on the Great, Swell to Great drawn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the accompanying keyboards that a coupler gives stops of the solo's division."""
    solo = solo_keyboard(scene)
    if solo is None:
        return
    divisions = divisions_at(scene, solo)
    for keyboard in accompanying_keyboards(scene):
        found = carried(scene, keyboard, divisions)
        if not found:
            continue
        via = tuple(dict.fromkeys(coupler for reach in found for coupler in reach.via))
        stops = tuple(dict.fromkeys(reach.stop for reach in found))
        yield Finding(
            NAME,
            LEVEL,
            f"{brings(scene.couplers, via)} the solo’s {stops_words(stops)} to "
            f"{the(keyboard.name)}, where the accompaniment is played.",
            Evidence(
                keyboards=(keyboard.id,), stops=tuple(stop.id for stop in stops), couplers=via
            ),
        )
