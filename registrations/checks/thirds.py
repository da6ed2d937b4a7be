"""Thirds: the stops that sound a third above the keys that are played."""

from instruments.organ import Keyboard
from registrations.checks.kinds import is_third
from registrations.checks.scene import Scene
from registrations.ranks import RankSpan


def thirds_at(scene: Scene, keyboard: Keyboard, key: int) -> frozenset[str]:
    """Give the ids of the stops of which a rank sounds a third above a key."""
    return frozenset(
        part.stop.id
        for span in scene.spans_on(keyboard)
        if span.low <= key <= span.high
        for part in span.parts
        if is_third(part.length)
    )


def third_ranks_at(scene: Scene, keyboard: Keyboard, key: int) -> tuple[RankSpan, ...]:
    """Give the ranks that sound a third above a key; none are worked out where none do."""
    if not thirds_at(scene, keyboard, key):
        return ()
    return tuple(
        one
        for one in scene.ranks_on(keyboard)
        if one.low <= key <= one.high and is_third(one.length)
    )
