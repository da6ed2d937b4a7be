"""Two keyboards are coupled to each other, so that both sound the same.

Why it matters: with the Swell coupled to the Great and the Great to the Swell, whatever is drawn
sounds from either keyboard, and going from one to the other changes nothing. Most often one of the
two couplers was left from the piece before. Put one in, and there are two sounds again.
"""

from collections.abc import Iterator
from itertools import combinations

from instruments.organ import Coupler, Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COMMON_PRACTICE
from registrations.checks.words import listed, the
from registrations.combination import Player, Texture

NAME, LEVEL, SUBJECT = "coupled-both-ways", Level.ADVICE, Subject.COUPLERS
SOURCES = (BY_CONSTRUCTION, COMMON_PRACTICE)
EXAMPLE = "Great: Open Diapason 8; Swell: Oboe 8; Swell to Great and Great to Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the pairs of played keyboards that unison couplers both ways make the same."""
    for one, other in combinations(scene.played, 2):
        there, back = _carrying(scene, one, other), _carrying(scene, other, one)
        if not (there and back) or _sound(scene, one) != _sound(scene, other):
            continue
        couplers = (*there, *back)
        yield Finding(
            NAME,
            _level(scene, {one.id, other.id}),
            f"{listed(coupler.name for coupler in couplers)} are both drawn: "
            f"{the(one.name)} and {the(other.name)} sound the same.",
            Evidence(
                keyboards=(one.id, other.id), couplers=tuple(coupler.id for coupler in couplers)
            ),
        )


def _carrying(scene: Scene, source: Keyboard, target: Keyboard) -> tuple[Coupler, ...]:
    """Give the unison couplers by which one keyboard's drawn stops come to another."""
    via = {coupler for reach in scene.reached_on(target.id) for coupler in reach.via}
    homes = {one.id for one in scene.organ.divisions if one.keyboard == source.id}
    return tuple(
        one
        for one in scene.couplers
        if one.target == target.id and one.source in homes and not one.shift and one.id in via
    )


def _sound(scene: Scene, keyboard: Keyboard) -> frozenset[tuple[str, int]]:
    return frozenset((reach.stop.id, reach.shift) for reach in scene.reached_on(keyboard.id))


def _level(scene: Scene, keyboards: set[str]) -> Level:
    hands = scene.combination.hands
    apart = {hands.on(Player.RIGHT), hands.on(Player.LEFT)} == keyboards
    return Level.WARNING if apart and scene.music.texture is not Texture.CHORDS else LEVEL
