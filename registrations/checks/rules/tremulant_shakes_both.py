"""One tremulant shakes the tune and its accompaniment alike.

Why it matters: a tremulant sets a solo off because the rest stands still, as a singer's voice moves
over a quiet accompaniment. Where both sound from one division everything shakes, and the tune is no
longer set off. Accompany from another division, or leave the tremulant in.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import AGO_GUIDE, COMMON_PRACTICE
from registrations.checks.words import stops_words, the

NAME, LEVEL, SUBJECT = "tremulant-shakes-both", Level.ADVICE, Subject.ACCESSORIES
SOURCES = (AGO_GUIDE, COMMON_PRACTICE)
EXAMPLE = "Solo on the Swell (Oboe 8), left hand on the Great (Swell to Great), Swell tremulant"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the shaken divisions that sound both where the tune is and where it is accompanied."""
    solo = solo_keyboard(scene)
    if solo is None:
        return
    tune = {reach.division for reach in scene.reached_on(solo.id)}
    for division, tremulant in scene.tremulants:
        for keyboard in accompanying_keyboards(scene) if division.id in tune else ():
            under = [one for one in scene.reached_on(keyboard.id) if one.division == division.id]
            if not under:
                continue
            stops = tuple(dict.fromkeys(reach.stop for reach in under))
            yield Finding(
                NAME,
                LEVEL,
                f"The tremulant of {the(division.name)} shakes the tune on {the(solo.name)} and "
                f"with it {stops_words(stops)} under the accompaniment on {the(keyboard.name)}.",
                Evidence(
                    keyboards=(solo.id, keyboard.id),
                    stops=tuple(stop.id for stop in stops),
                    tremulants=(tremulant.id,),
                ),
            )
