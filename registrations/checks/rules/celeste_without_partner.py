"""A stop that is tuned to beat sounds with nothing to beat against.

Why it matters: a celeste of one rank is tuned a little sharp or flat, and the slow wave that is its
charm comes from a second soft stop of its pitch at true pitch. By itself it does not wave, it is
only out of tune with the rest of the organ. Draw the Salicional, the Gamba or the Dulciana that it
was tuned to. A celeste of two ranks brings its partner along.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.pitch import length_typeset
from instruments.tone import Family
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import COMMON_PRACTICE, COMPOUND_PAGE
from registrations.checks.words import on, stops_words
from registrations.sounding import Part, Span

NAME, LEVEL, SUBJECT = "celeste-without-partner", Level.WARNING, Subject.PITCH
SOURCES = (COMPOUND_PAGE, COMMON_PRACTICE)
EXAMPLE = "Swell: Voix Celeste 8 alone"

_SOFT = (Family.STRING, Family.FLUTE)


def check(scene: Scene) -> Iterator[Finding]:
    """Find the undulating stops of one rank that no other stop sounds with."""
    for keyboard in judged_keyboards(scene):
        alone: dict[Part, list[Span]] = {}
        for span in scene.spans_on(keyboard):
            for part in span.parts:
                if part.stop.is_undulating and part.stop.ranks == 1 and not _partnered(part, span):
                    alone.setdefault(part, []).append(span)
        for part, spans in alone.items():
            keys = hull(spans)
            yield Finding(
                NAME,
                LEVEL,
                f"{on(keyboard, keys)} {stops_words([part.stop])} has no partner at "
                f"{length_typeset(part.length)} to beat against: it is only out of tune.",
                Evidence(
                    keyboards=(keyboard.id,),
                    stops=(part.stop.id,),
                    keys=keys,
                    lengths=(part.length,),
                ),
            )


def _partnered(celeste: Part, span: Span) -> bool:
    """Tell whether another stop sounds at its pitch, or a soft one an octave from it."""
    others = [part for part in span.parts if part.stop.id != celeste.stop.id]
    return any(
        part.length == celeste.length
        or (_is_soft(part) and part.length / celeste.length in (2, Fraction(1, 2)))
        for part in others
    )


def _is_soft(part: Part) -> bool:
    return part.stop.family in _SOFT and not part.stop.is_undulating
