"""Roles: who has the tune and who accompanies, where the music has a solo."""

from instruments.organ import Keyboard
from registrations.checks.scene import Scene
from registrations.combination import Player
from registrations.sounding import Reach

_MANUAL_PLAYERS = (Player.RIGHT, Player.LEFT)


def solo_keyboard(scene: Scene) -> Keyboard | None:
    """Give the keyboard that has the tune to itself; None where there is no solo or no such one."""
    if scene.soloist is None:
        return None
    solo = scene.combination.hands.on(scene.soloist)
    if solo in _accompanying(scene):
        return None
    return next((one for one in scene.played if one.id == solo), None)


def accompanying_keyboards(scene: Scene) -> tuple[Keyboard, ...]:
    """Give the keyboards of the hands that accompany a solo; none where there is none."""
    if solo_keyboard(scene) is None:
        return ()
    return tuple(one for one in scene.played if one.id in _accompanying(scene))


def _accompanying(scene: Scene) -> frozenset[str | None]:
    hands = scene.combination.hands
    return frozenset(hands.on(one) for one in _MANUAL_PLAYERS if one is not scene.soloist)


def divisions_at(scene: Scene, keyboard: Keyboard) -> frozenset[str]:
    """Give what is at home on a keyboard, and the floating divisions that sound there."""
    floating = {reach.division for reach in scene.reached_on(keyboard.id)}
    return frozenset(
        one.id
        for one in scene.organ.divisions
        if one.keyboard == keyboard.id or (one.keyboard is None and one.id in floating)
    )


def carried(scene: Scene, keyboard: Keyboard, divisions: frozenset[str]) -> tuple[Reach, ...]:
    """Give what couplers bring to a keyboard from some divisions."""
    return tuple(
        reach
        for reach in scene.reached_on(keyboard.id)
        if reach.via and reach.division in divisions
    )
