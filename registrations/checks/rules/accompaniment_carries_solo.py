"""A coupler brings the solo stops under the accompanying hand.

Why it matters: a solo stands out because only the tune has its colour. When a coupler brings the
stops of the solo's division to the keyboard of the other hand as well, the accompaniment sounds
them too and the tune is lost in it. Put the coupler in, or change hands to keyboards that
are not coupled that way.
"""

from collections.abc import Iterator

from instruments.organ import Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import listed, stops_words, the
from registrations.combination import Player

NAME, LEVEL, SUBJECT = "accompaniment-carries-solo", Level.WARNING, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION, COMMON_PRACTICE)
EXAMPLE = "Solo on the Swell (Oboe 8), left hand on the Great, Swell to Great drawn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the accompanying keyboards that a coupler gives stops of the solo's division."""
    hands = scene.combination.hands
    if scene.soloist is None or not (solo := hands.on(scene.soloist)):
        return
    others = {hands.on(one) for one in (Player.RIGHT, Player.LEFT) if one is not scene.soloist}
    divisions = _solo_divisions(scene, solo)
    for keyboard in scene.played:
        if keyboard.id in others - {solo}:
            yield from _carried(scene, keyboard, divisions)


def _solo_divisions(scene: Scene, solo: str) -> frozenset[str]:
    """Give what is at home on the solo's keyboard, and the floating divisions that sound there."""
    floating = {reach.division for reach in scene.reached_on(solo)}
    return frozenset(
        one.id
        for one in scene.organ.divisions
        if one.keyboard == solo or (one.keyboard is None and one.id in floating)
    )


def _carried(scene: Scene, keyboard: Keyboard, divisions: frozenset[str]) -> Iterator[Finding]:
    carried = [
        reach
        for reach in scene.reached_on(keyboard.id)
        if reach.via and reach.division in divisions
    ]
    if not carried:
        return
    via = tuple(dict.fromkeys(coupler for reach in carried for coupler in reach.via))
    names = [one.name for one in scene.couplers if one.id in via]
    stops = tuple(dict.fromkeys(reach.stop for reach in carried))
    yield Finding(
        NAME,
        LEVEL,
        f"{listed(names)} {'brings' if len(names) == 1 else 'bring'} the solo’s "
        f"{stops_words(stops)} to {the(keyboard.name)}, where the accompaniment is played.",
        Evidence(keyboards=(keyboard.id,), stops=tuple(stop.id for stop in stops), couplers=via),
    )
