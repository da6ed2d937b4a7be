"""An octave coupler finds no pipes at the end of the keyboard.

Why it matters: a key in the top octave asks an octave coupler for a pipe an octave higher, and most
chests end where the keyboard does. There the octave falls silent, so that a tune that climbs grows
thin just where it should shine; a sub-octave coupler leaves the bottom octave as it was. Some
chests are extended by an octave, and then nothing is missing.
"""

from collections.abc import Iterator

from instruments.organ import Coupler, Keyboard
from instruments.pipework import stop_compass
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, MILLER_1913
from registrations.checks.words import on

NAME, LEVEL, SUBJECT = "octave-runs-out", Level.ADVICE, Subject.COUPLERS
SOURCES = (MILLER_1913, BY_CONSTRUCTION)
EXAMPLE = "Swell: Oboe 8, Swell Octave; both have pipes for the 61 keys and no more"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the octave couplers that carry nothing at one end of a played keyboard."""
    for coupler in scene.couplers:
        if not coupler.shift or coupler.unison_off:
            continue
        for keyboard in scene.played:
            keys = _without(scene, coupler, keyboard)
            if keys is not None:
                yield _finding(coupler, keyboard, keys)


def _without(scene: Scene, coupler: Coupler, keyboard: Keyboard) -> tuple[int, int] | None:
    """Give the keys at the end of a keyboard for which no carried stop has a pipe any more."""
    carried = frozenset(
        reach.stop.id
        for reach in scene.reached_on(keyboard.id)
        if coupler.id in reach.via and reach.shift == coupler.shift
    )
    ends = _ends(scene, carried, coupler.shift > 0)
    if not ends:
        return None
    if coupler.shift > 0:
        end = max(ends)
        low, high = end - coupler.shift + 1, min(end, keyboard.compass.high)
    else:
        end = min(ends)
        low, high = max(end, keyboard.compass.low), end - coupler.shift - 1
    return (low, high) if low <= high else None


def _ends(scene: Scene, carried: frozenset[str], upper: bool) -> list[int]:
    """Give the last pipes of the stops that go to the end of their keyboard; others are short."""
    ends = []
    for division, stop in scene.stops:
        if stop.id in carried:
            pipes = stop_compass(scene.organ, division, stop)
            home = scene.organ.home_compass(division)
            if upper and pipes.high >= home.high:
                ends.append(pipes.high)
            elif not upper and pipes.low <= home.low:
                ends.append(pipes.low)
    return ends


def _finding(coupler: Coupler, keyboard: Keyboard, keys: tuple[int, int]) -> Finding:
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {coupler.name} finds no pipes: they end with the keyboard.",
        Evidence(keyboards=(keyboard.id,), couplers=(coupler.id,), keys=keys),
    )
