"""Unison off is drawn and takes a division away from its own keyboard.

Why it matters: unison off silences a division at its own pitch, so that an octave coupler can play
it an octave higher or lower instead. With no octave coupler drawn nothing is left of it: what is
drawn there is not heard on its own keyboard.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, CONSOLE_ARTICLE
from registrations.checks.words import stops_words, the

NAME, LEVEL, SUBJECT = "unison-off-silence", Level.FAULT, Subject.COUPLERS
SOURCES = (CONSOLE_ARTICLE, BY_CONSTRUCTION)
EXAMPLE = "Swell: Oboe 8 and Swell Unison Off, both hands on the Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the divisions with drawn stops that their own keyboard, being played, no longer has.

    Where nobody has said who plays what, a division that sounds from another keyboard is meant so.
    """
    hands = scene.combination.hands
    for coupler in scene.couplers:
        division = scene.organ.division(coupler.source)
        home = division.keyboard
        stops = tuple(stop for where, stop in scene.stops if where is division)
        sounding = {one.keyboard for one in scene.reaches if one.division == division.id}
        played = home in hands.keyboards() if hands else not sounding
        if not (coupler.unison_off and home and stops and played) or home in sounding:
            continue
        silent = not scene.reached_on(home)
        yield Finding(
            NAME,
            LEVEL if silent else Level.WARNING,
            f"{coupler.name} is drawn and no octave coupler: {stops_words(stops)} "
            f"will not be heard on {the(scene.organ.keyboard(home).name)}"
            f"{', which is silent' if silent else ''}.",
            Evidence(
                keyboards=(home,), stops=tuple(stop.id for stop in stops), couplers=(coupler.id,)
            ),
        )
