"""Octaves sound on a keyboard, and neither an 8 nor a 16 beneath them.

Why it matters: the notes on the page are meant at 8. With only a 4 or a 2 the music is heard an
octave or two too high: hymns lose their tenor, and the pedals fall away below the hands. One flute
or one principal at 4 can be a fine colour, played an octave lower or left as it is.
"""

from collections.abc import Iterator

from instruments.organ import Keyboard, Stop
from instruments.pitch import UNISON, is_octave, length_typeset
from instruments.tone import Family
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.kinds import chorus_stops, is_chorus_mixture
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE
from registrations.checks.words import on, stops_words
from registrations.combination import Player, Texture
from registrations.sounding import lengths_of

NAME, LEVEL, SUBJECT = "no-unison", Level.WARNING, Subject.PITCH
SOURCES = (COMMON_PRACTICE,)
EXAMPLE = "Great: Principal 4 and Fifteenth 2, for a hymn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the keyboards on which 4 or less is the lowest octave that sounds, at every key.

    Off-unison pitches alone, a mixture without its chorus and a tune in the pedals at 4 are other
    matters.
    """
    for keyboard in judged_keyboards(scene):
        if _has_the_tune_under_the_feet(scene, keyboard):
            continue
        lengths = tuple(filter(is_octave, lengths_of(scene.spans_on(keyboard))))
        stops = tuple(dict.fromkeys(reach.stop for reach in scene.reached_on(keyboard.id)))
        if not lengths or lengths[0] >= UNISON or any(map(is_chorus_mixture, stops)):
            continue
        yield Finding(
            NAME,
            _level(scene, stops),
            f"{on(keyboard)} nothing sounds at 8′: {stops_words(stops)} "
            f"{'begins' if len(stops) == 1 else 'begin'} at {length_typeset(lengths[0])}.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                keys=(keyboard.compass.low, keyboard.compass.high),
                lengths=(UNISON, *lengths),
            ),
        )


def _has_the_tune_under_the_feet(scene: Scene, keyboard: Keyboard) -> bool:
    return scene.soloist is Player.FEET and keyboard in scene.pedals_played


def _level(scene: Scene, stops: tuple[Stop, ...]) -> Level:
    """Warn where chords sound a chorus; a solo, a trio and a flute by itself may be meant."""
    flutes = all(stop.family is Family.FLUTE for stop in stops)
    if scene.music.texture is not Texture.CHORDS or flutes or not chorus_stops(stops):
        return Level.ADVICE
    return LEVEL
