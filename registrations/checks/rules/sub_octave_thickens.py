"""A sub-octave coupler doubles a chorus, or a 16, an octave down under chords.

Why it matters: an octave lower, the close chords of the left hand lie in the bottom octave of the
pipes, where the ear no longer parts their notes and hears mud. A single soft 8 may bear it. A whole
chorus does not, nor does a 16, which comes out at 32. For a tune by itself a sub-octave is fine.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.compass import MIDDLE_C
from instruments.organ import Coupler, Keyboard, KeyboardKind, Stop
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import chorus_stops
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.sounding import Reach

NAME, LEVEL, SUBJECT = "sub-octave-thickens", Level.ADVICE, Subject.COUPLERS
SOURCES = (COMMON_PRACTICE,)
EXAMPLE = "Great: Double 16, Open Diapason 8, Principal 4 and Great Sub Octave, for a hymn"

_DOUBLE = Fraction(16)


def check(scene: Scene) -> Iterator[Finding]:
    """Find the sub-octave couplers under chords that carry a chorus or a 16."""
    if scene.music.texture is not Texture.CHORDS:
        return
    for coupler in scene.couplers:
        for keyboard in scene.played if coupler.shift < 0 else ():
            if keyboard.kind is KeyboardKind.MANUAL:
                yield from _thickened(scene, coupler, keyboard)


def _thickened(scene: Scene, coupler: Coupler, keyboard: Keyboard) -> Iterator[Finding]:
    """Look at the keys below middle C, where the left hand's chords lie."""
    low = [
        reach
        for reach in scene.reached_on(keyboard.id)
        if coupler.id in reach.via and reach.shift < 0 and reach.low < MIDDLE_C
    ]
    stops = _heavy(low)
    if not stops:
        return
    keys = min(reach.low for reach in low), min(max(reach.high for reach in low), MIDDLE_C - 1)
    yield Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {coupler.name} doubles {stops_words(stops)} an octave lower: "
        "chords turn thick.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=tuple(stop.id for stop in stops),
            couplers=(coupler.id,),
            keys=keys,
        ),
    )


def _heavy(reaches: list[Reach]) -> tuple[Stop, ...]:
    stops = [reach.stop for reach in reaches]
    deep = (stop for stop in stops if stop.length is not None and stop.length >= _DOUBLE)
    return tuple(dict.fromkeys((*deep, *chorus_stops(stops))))
