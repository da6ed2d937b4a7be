"""Pipes are asked for that are shorter than any that are made.

Why it matters: the top pipe of a 2, at c4, is 1/16 of a foot long, and smaller ones can hardly be
made or tuned. Above that a high rank goes back an octave, and an octave coupler finds the same
pipes again or none: what looks like more brilliance on paper is not there in the treble. Mixtures
break back for this reason, and a 1 or a 1 1/3 repeats its top octave.
"""

import math
from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache

from instruments.organ import Keyboard
from instruments.pipework import composition_of
from instruments.pitch import length_typeset
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene
from registrations.checks.sources import CHORUS_ARTICLE, COMMON_PRACTICE, MIXTURE_ARTICLE
from registrations.checks.words import listed, on, stop_words
from registrations.sounding import Reach

NAME, LEVEL, SUBJECT = "above-pipe-limit", Level.ADVICE, Subject.PITCH
SOURCES = (MIXTURE_ARTICLE, CHORUS_ARTICLE, COMMON_PRACTICE)
EXAMPLE = "Swell: Fifteenth 2 with the octave coupler, on a chest of 73 keys"

#: The shortest pipe, in feet: the top of a 2 over 61 keys (Wikipedia, “Mixture (organ stop)”;
#: Encyclopaedia Britannica online, “Organ stops”: three quarters of an inch).
SHORTEST = Fraction(1, 16)
_OCTAVE = 12


def check(scene: Scene) -> Iterator[Finding]:
    """Find what asks for pipes past the limit: a rank over more keys than an octave, or a coupler.

    A rank that passes it in its top octave only is made to repeat there. Mixtures break back, or
    nobody has said where they do.
    """
    for keyboard in judged_keyboards(scene):
        for reach in scene.reached_on(keyboard.id):
            first = _first(reach)
            if first is None:
                continue
            if reach.shift > 0 or reach.high - first >= _OCTAVE:
                yield _finding(scene, keyboard, reach, first)


def _first(reach: Reach) -> int | None:
    """Give the lowest played key for which a single rank's pipe is too short, if there is one."""
    length = reach.stop.length
    if length is None:
        return None
    first = max(reach.low, last_key(length) + 1 - reach.shift)
    return None if first > reach.high or composition_of(reach.stop) else first


@lru_cache(maxsize=64)
def last_key(length: Fraction) -> int:
    """Give the last chest key at which a rank that does not break keeps to the limit."""
    return math.floor(12 * math.log2(length / SHORTEST))


def _finding(scene: Scene, keyboard: Keyboard, reach: Reach, first: int) -> Finding:
    names = [one.name for one in scene.couplers if one.id in reach.via]
    through = f", through {listed(names)}," if names else ""
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, (first, reach.high))} {stop_words(reach.stop)}{through} asks for pipes "
        f"shorter than {length_typeset(SHORTEST)}, which are hardly ever made.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=(reach.stop.id,),
            couplers=reach.via,
            keys=(first, reach.high),
            lengths=(SHORTEST,),
            numbers=(("first_key", first), ("keys", reach.high - first + 1)),
        ),
    )
