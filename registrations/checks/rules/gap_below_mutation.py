"""More than an octave is empty below a mutation.

Why it matters: a mutation melts into the sound when the pitches below it lead up to it: 8, 4, then
2 2/3. With the 4 missing the twelfth stands alone above the unison and is heard as a second tune;
from 8 straight to 1 3/5 the step is more than two octaves, and the third whistles by itself. It can
be meant, as a solo colour. In chords it almost never is.
"""

import math
from collections.abc import Iterator
from fractions import Fraction

from instruments.organ import Keyboard, Stop
from instruments.pitch import UNISON, interval_name, is_octave, length_typeset
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import is_mutation
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import AUDSLEY_1921, COMMON_PRACTICE
from registrations.checks.words import lengths_words, on, stop_words
from registrations.sounding import Span, lengths_of

NAME, LEVEL, SUBJECT = "gap-below-mutation", Level.WARNING, Subject.PITCH
SOURCES = (AUDSLEY_1921, COMMON_PRACTICE)
EXAMPLE = "Swell: Flute 8 and Tierce 1 3/5"

#: Up to an octave a step blends; from two octaves it never does (common practice, no source).
_BLENDS, _BREAKS = 2, 4


def check(scene: Scene) -> Iterator[Finding]:
    """Find the mutations whose next lower pitch is further than an octave below."""
    for keyboard in scene.played:
        gaps: dict[tuple[Stop, Fraction], list[tuple[Fraction, Span]]] = {}
        for span in scene.spans_on(keyboard):
            for stop, length, below in _gaps(span):
                gaps.setdefault((stop, length), []).append((below, span))
        for (stop, length), found in gaps.items():
            below = max(lower for lower, _ in found)
            widest = [span for lower, span in found if lower == below]
            yield _finding(keyboard, stop, length, below, hull(widest))


def _gaps(span: Span) -> Iterator[tuple[Stop, Fraction, Fraction]]:
    """Give each mutation with too wide a step below, as its heard length and the next longer one.

    Where no octave of the unison sounds at all, the mutation is alone, which is another fault.
    """
    mutations = [part for part in span.parts if is_mutation(part.stop)]
    lengths = lengths_of([span]) if mutations else ()
    if not any(map(is_octave, lengths)):
        return
    for part in mutations:
        place = lengths.index(part.length)
        if place and lengths[place - 1] / part.length > _BLENDS:
            yield part.stop, part.length, lengths[place - 1]


def _finding(
    keyboard: Keyboard, stop: Stop, length: Fraction, below: Fraction, keys: tuple[int, int]
) -> Finding:
    step = below / length
    missing = _between(below, length)
    return Finding(
        NAME,
        Level.WARNING if step >= _BREAKS else Level.ADVICE,
        f"{on(keyboard, keys)} {stop_words(stop)} is {interval_name(UNISON / step)} than the next "
        f"pitch below it, {length_typeset(below)}: {lengths_words(missing)} "
        f"{'is' if len(missing) == 1 else 'are'} missing between.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=(stop.id,),
            keys=keys,
            lengths=(length, *missing),
            numbers=(("step_cents", round(1200 * math.log2(step), 3)),),
        ),
    )


def _between(below: Fraction, length: Fraction) -> tuple[Fraction, ...]:
    """Give the octaves of the lower pitch that would lead up to the mutation."""
    missing = []
    while below / 2 > length:
        below /= 2
        missing.append(below)
    return tuple(missing)
