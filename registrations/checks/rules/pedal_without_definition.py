"""Under a chorus of the hands the feet sound nothing higher than 16.

Why it matters: a 16 alone is weight without a line. Beneath a chorus its pitch is hard to follow,
and the bass seems to lag and to waver. An 8, from the pedals' own stops or by a coupler from the
manual, makes the line clear; under soft stops a 16 by itself is enough.
"""

from collections.abc import Iterator

from instruments.organ import Keyboard, Stop
from instruments.pitch import UNISON
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import chorus_stops
from registrations.checks.offered import lengths_offered
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, ORGAN_WIKIBOOK
from registrations.checks.words import on, stops_words
from registrations.sounding import lengths_of

NAME, LEVEL, SUBJECT = "pedal-without-definition", Level.ADVICE, Subject.PEDAL
SOURCES = (ORGAN_WIKIBOOK, COMMON_PRACTICE)
EXAMPLE = "Great: Principals 8, 4 and 2; Pedal: Bourdon 16 alone"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the pedals that sound 16 and lower only, though an 8 could be had, under a chorus."""
    pedals = [one for one in scene.pedals_played if _is_bare(scene, one)]
    chorus = _chorus(scene) if pedals else ()
    for keyboard in pedals if chorus else ():
        stops = tuple(dict.fromkeys(reach.stop for reach in scene.reached_on(keyboard.id)))
        yield Finding(
            NAME,
            LEVEL,
            f"{on(keyboard)} {stops_words(stops)} {'has' if len(stops) == 1 else 'have'} no 8′ "
            f"above, and the hands play {stops_words(chorus)}.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                lengths=(UNISON, *lengths_of(scene.spans_on(keyboard))),
            ),
        )


def _is_bare(scene: Scene, keyboard: Keyboard) -> bool:
    lengths = lengths_of(scene.spans_on(keyboard))
    return (
        bool(lengths)
        and lengths[-1] > UNISON
        and any(length <= UNISON for length in lengths_offered(scene.organ, keyboard))
    )


def _chorus(scene: Scene) -> tuple[Stop, ...]:
    """Give what makes a chorus on the first keyboard of the hands that has one."""
    for keyboard in scene.played:
        if keyboard not in scene.pedals_played:
            found = chorus_stops(reach.stop for reach in scene.reached_on(keyboard.id))
            if found:
                return found
    return ()
