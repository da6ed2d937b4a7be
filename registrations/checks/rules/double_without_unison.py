"""A 16 sounds on a manual and no 8 with it.

Why it matters: a double lies an octave below the notes that are written. Over it the 8 must be
there, or the hands play an octave too low and the harmony sinks beneath the bass. A 16 gives a full
chorus weight, when the 8 and the 4 above it are there. As a solo played an octave higher it can be
meant.
"""

from collections.abc import Iterator

from instruments.organ import KeyboardKind
from instruments.pitch import UNISON
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import COMMON_PRACTICE, ORGAN_WIKIBOOK
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.sounding import lengths_of

NAME, LEVEL, SUBJECT = "double-without-unison", Level.WARNING, Subject.PITCH
SOURCES = (ORGAN_WIKIBOOK, COMMON_PRACTICE)
EXAMPLE = "Great: Bourdon 16 and Principal 4"

_DOUBLE = 2 * UNISON


def check(scene: Scene) -> Iterator[Finding]:
    """Find the manuals that sound a 16, and an 8 at no key."""
    for keyboard in judged_keyboards(scene):
        if keyboard.kind is not KeyboardKind.MANUAL:
            continue
        spans = scene.spans_on(keyboard)
        lengths = lengths_of(spans)
        if _DOUBLE not in lengths or UNISON in lengths:
            continue
        found = [
            (part.stop, span) for span in spans for part in span.parts if part.length == _DOUBLE
        ]
        stops = tuple(dict.fromkeys(stop for stop, _ in found))
        keys = hull([span for _, span in found])
        yield Finding(
            NAME,
            LEVEL if scene.music.texture is Texture.CHORDS else Level.ADVICE,
            f"{on(keyboard, keys)} {stops_words(stops)} "
            f"{'sounds' if len(stops) == 1 else 'sound'} at 16′ with no 8′ above: "
            "all is heard an octave low.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                keys=keys,
                lengths=(UNISON, _DOUBLE),
            ),
        )
