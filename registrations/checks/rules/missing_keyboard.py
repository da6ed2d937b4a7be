"""A hand or the feet are put where they cannot play.

Why it matters: the organ has no such keyboard, or it is one for hands and the feet are put on it,
or the other way about. That happens when a registration comes from another organ, or the organ was
written down anew. Say again who plays what.
"""

from collections.abc import Iterator

from instruments.organ import KeyboardKind
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import PLAYER_WORDS, capital, the
from registrations.combination import Player

NAME, LEVEL, SUBJECT = "missing-keyboard", Level.FAULT, Subject.HANDS
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "The right hand on the Choir, of an organ with Great and Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the hands and feet on a keyboard that is not there or not made for them."""
    for player in Player:
        wanted = scene.combination.hands.on(player)
        if wanted is None:
            continue
        said = _said(scene, player, wanted)
        if said:
            verb = "are" if player is Player.FEET else "is"
            yield Finding(
                NAME,
                LEVEL,
                f"{capital(PLAYER_WORDS[player])} {verb} put on {said}.",
                Evidence(keyboards=(wanted,)),
            )


def _said(scene: Scene, player: Player, wanted: str) -> str:
    """Say what is wrong with the keyboard of a hand or the feet; nothing when it is right."""
    keyboard = next((one for one in scene.organ.keyboards if one.id == wanted), None)
    if keyboard is None:
        return f"“{wanted}”: this organ has no such keyboard"
    if player is Player.FEET and keyboard.kind is KeyboardKind.MANUAL:
        return f"{the(keyboard.name)}, which is played with the hands"
    if player is not Player.FEET and keyboard.kind is KeyboardKind.PEDAL:
        return f"{the(keyboard.name)}, which is played with the feet"
    return ""
