"""The feet play and nothing sounds under them.

Why it matters: the bass of the music is in the pedals. Where no stop is drawn for them and no
coupler brings one the feet play dumb pedals, and the hands stand in the air. Draw a 16 and an 8, or
a coupler from the manual that is played.
"""

from collections.abc import Iterator

from instruments.organ import KeyboardKind
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import the

NAME, LEVEL, SUBJECT = "pedal-silent", Level.FAULT, Subject.PEDAL
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "Great: Open Diapason 8; the feet on the pedals, with no pedal stop and no coupler"


def check(scene: Scene) -> Iterator[Finding]:
    """Find silent pedals that the feet are put on; nothing drawn at all is meant."""
    if not (scene.stops or scene.couplers or scene.tremulants):
        return
    for keyboard in scene.played:
        feet = scene.combination.hands.feet == keyboard.id
        if feet and keyboard.kind is KeyboardKind.PEDAL and not scene.reached_on(keyboard.id):
            yield Finding(
                NAME,
                LEVEL,
                f"The feet are on {the(keyboard.name)}, where nothing sounds.",
                Evidence(keyboards=(keyboard.id,)),
            )
