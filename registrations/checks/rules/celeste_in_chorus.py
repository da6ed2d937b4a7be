"""A stop that is tuned to beat sounds in a chorus.

Why it matters: a celeste is tuned a little sharp or flat on purpose, so that it beats slowly with
one soft stop of its own pitch. Against a chorus, a mixture, a mutation or a trumpet it is simply
out of tune. Keep it for its partner and a soft 8 or 4.
"""

from collections.abc import Iterator

from instruments.organ import Stop
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import chorus_stops, is_compound, is_mutation
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import COMMON_PRACTICE, COMPOUND_PAGE
from registrations.checks.words import on, stops_words
from registrations.sounding import Span

NAME, LEVEL, SUBJECT = "celeste-in-chorus", Level.WARNING, Subject.PITCH
SOURCES = (COMPOUND_PAGE, COMMON_PRACTICE)
EXAMPLE = "Swell: Salicional 8, Celeste 8 and Mixture III"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the played keyboards where an undulating stop meets what it must not beat against."""
    for keyboard in scene.played:
        clashing = [
            span
            for span in scene.spans_on(keyboard)
            if any(part.stop.is_undulating for part in span.parts) and _against(span)
        ]
        if not clashing:
            continue
        keys = hull(clashing)
        stops = dict.fromkeys(part.stop for span in clashing for part in span.parts)
        celestes = tuple(stop for stop in stops if stop.is_undulating)
        against = tuple(dict.fromkeys(stop for span in clashing for stop in _against(span)))
        yield Finding(
            NAME,
            LEVEL,
            f"{on(keyboard, keys)} {stops_words(celestes)} "
            f"{'is' if len(celestes) == 1 else 'are'} out of tune with {stops_words(against)}.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in (*celestes, *against)),
                keys=keys,
            ),
        )


def _against(span: Span) -> tuple[Stop, ...]:
    """Give what no celeste belongs with: chorus stops, any compound stop, any mutation."""
    stops = tuple(part.stop for part in span.parts)
    coloured = (stop for stop in stops if is_compound(stop) or is_mutation(stop))
    return tuple(dict.fromkeys((*chorus_stops(stops), *coloured)))
