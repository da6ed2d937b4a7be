"""A pedal coupler brings the solo stops to the feet.

Why it matters: a tune stands out because nothing else has its colour. With the solo's own division
coupled to the pedals, each bass note speaks in that colour as well, often louder than the tune,
since it is lower. Couple the keyboard of the accompaniment instead, or draw an 8 in the pedals.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import carried, divisions_at, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import PLAYER_WORDS, brings, stops_words
from registrations.combination import Player

NAME, LEVEL, SUBJECT = "bass-takes-solo-colour", Level.WARNING, Subject.COUPLERS
SOURCES = (COMMON_PRACTICE, BY_CONSTRUCTION)
EXAMPLE = "Solo on the Great (Trumpet 8), left hand on the Swell, Great to Pedal drawn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find what couplers bring to the feet from the division of the hand that has the tune."""
    solo = solo_keyboard(scene)
    if solo is None or scene.soloist is Player.FEET:
        return
    for keyboard in scene.pedals_played:
        found = carried(scene, keyboard, divisions_at(scene, solo))
        if not found:
            continue
        via = tuple(dict.fromkeys(coupler for reach in found for coupler in reach.via))
        stops = tuple(dict.fromkeys(reach.stop for reach in found))
        yield Finding(
            NAME,
            LEVEL,
            f"{brings(scene.couplers, via)} the solo’s {stops_words(stops)} "
            f"to {PLAYER_WORDS[Player.FEET]}: the bass takes the colour of the tune.",
            Evidence(
                keyboards=(keyboard.id,), stops=tuple(stop.id for stop in stops), couplers=via
            ),
        )
