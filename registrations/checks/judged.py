"""Judged: the keyboards whose own pitches a teacher would listen to."""

from instruments.organ import Keyboard
from registrations.checks.scene import Scene


def judged_keyboards(scene: Scene) -> tuple[Keyboard, ...]:
    """Give the keyboards that are played; without hands, those that do not lend all they sound.

    A Swell that is coupled to the Great whole is drawn for the Great, unless a hand is put there.
    """
    if scene.combination.hands:
        return scene.played
    lent = {(one.division, one.stop.id) for one in scene.reaches if one.via}
    return tuple(
        one
        for one in scene.played
        if any(
            reach.via or (reach.division, reach.stop.id) not in lent
            for reach in scene.reached_on(one.id)
        )
    )
