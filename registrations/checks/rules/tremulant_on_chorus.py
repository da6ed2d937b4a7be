"""A tremulant is drawn on a division that sounds a chorus.

Why it matters: the tremulant makes the wind pulse. That suits a solo flute, a Vox Humana or a soft
reed, as a singer's vibrato does. A principal chorus, a mixture or a trumpet asks for
steady wind: shaken, it bleats, and chords lose their footing.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import chorus_stops
from registrations.checks.scene import Scene
from registrations.checks.sources import AGO_GUIDE, COMMON_PRACTICE
from registrations.checks.words import stops_words, the

NAME, LEVEL, SUBJECT = "tremulant-on-chorus", Level.WARNING, Subject.ACCESSORIES
SOURCES = (AGO_GUIDE, COMMON_PRACTICE)
EXAMPLE = "Great: Principal 8 and 4 with the Great tremulant"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the drawn tremulants whose division sounds a chorus on a played keyboard."""
    played = {one.id for one in scene.played}
    for division, tremulant in scene.tremulants:
        chorus = chorus_stops(
            reach.stop
            for reach in scene.reaches
            if reach.division == division.id and reach.keyboard in played
        )
        if chorus:
            yield Finding(
                NAME,
                LEVEL,
                f"The tremulant of {the(division.name)} shakes {stops_words(chorus)}: "
                "a chorus wants steady wind.",
                Evidence(
                    keyboards=tuple(one.id for one in scene.played if one.id == division.keyboard),
                    stops=tuple(stop.id for stop in chorus),
                    tremulants=(tremulant.id,),
                ),
            )
