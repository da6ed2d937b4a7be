"""A hand is put on a keyboard that sounds nothing.

Why it matters: whatever is played there will not be heard. Either a stop or a coupler was
forgotten, or the hand belongs on another keyboard.
"""

from collections.abc import Iterator

from instruments.organ import KeyboardKind
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import PLAYER_WORDS, capital, listed, the
from registrations.combination import Player

NAME, LEVEL, SUBJECT = "silent-keyboard", Level.FAULT, Subject.HANDS
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "Great: Open Diapason 8; the right hand on the Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the silent keyboards that a hand is put on; nothing drawn at all is meant.

    Feet on silent pedals are another fault.
    """
    if not (scene.stops or scene.couplers or scene.tremulants):
        return
    hands = scene.combination.hands
    sounding = {reach.keyboard for reach in scene.reaches}
    for keyboard in scene.played:
        there = [one for one in Player if hands.on(one) == keyboard.id]
        if keyboard.kind is KeyboardKind.PEDAL and Player.FEET in there:
            there.remove(Player.FEET)
        if there and keyboard.id not in sounding:
            players = [PLAYER_WORDS[one] for one in there]
            verb = "is" if len(there) == 1 and there != [Player.FEET] else "are"
            yield Finding(
                NAME,
                LEVEL,
                f"{capital(listed(players))} {verb} on {the(keyboard.name)}, where nothing sounds.",
                Evidence(keyboards=(keyboard.id,)),
            )
