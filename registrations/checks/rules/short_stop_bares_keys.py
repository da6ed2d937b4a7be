"""Some keys of a played keyboard are silent, because what is drawn is short there.

Why it matters: a celeste often begins at tenor C, a Cornet at middle C, and the halves of a divided
stop meet at middle C. Below (or above) nothing speaks, and the left hand plays dumb keys. Draw a
stop of full compass with it. For a tune that stays where the stop has pipes nothing is wrong.
"""

from collections.abc import Iterator
from itertools import groupby

from instruments.organ import Keyboard, KeyboardKind
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.roles import solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, MILLER_1913
from registrations.checks.words import on, stops_words
from registrations.combination import Texture

NAME, LEVEL, SUBJECT = "short-stop-bares-keys", Level.WARNING, Subject.HANDS
SOURCES = (MILLER_1913, COMMON_PRACTICE)
EXAMPLE = "Swell: Voix Celeste 8 (from tenor C) alone, both hands on the Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the silent keys of the played keyboards that sound something elsewhere."""
    for keyboard in judged_keyboards(scene):
        reached = scene.reached_on(keyboard.id)
        stops = tuple(dict.fromkeys(reach.stop for reach in reached))
        for keys in _bare(scene, keyboard) if reached else ():
            yield Finding(
                NAME,
                Level.ADVICE if _has_a_tune(scene, keyboard) else LEVEL,
                f"{on(keyboard, keys)} nothing sounds: {stops_words(stops)} "
                f"{'has' if len(stops) == 1 else 'have'} no pipes there.",
                Evidence(
                    keyboards=(keyboard.id,), stops=tuple(stop.id for stop in stops), keys=keys
                ),
            )


def _bare(scene: Scene, keyboard: Keyboard) -> Iterator[tuple[int, int]]:
    """Give the unbroken runs of silent keys, as their ends."""
    compass, reached = keyboard.compass, scene.reached_on(keyboard.id)
    if any(one.low <= compass.low and compass.high <= one.high for one in reached):
        return
    speaking = {key for one in reached for key in range(one.low, one.high + 1)}
    for speaks, keys in groupby(compass.keys(), key=speaking.__contains__):
        if not speaks:
            run = tuple(keys)
            yield run[0], run[-1]


def _has_a_tune(scene: Scene, keyboard: Keyboard) -> bool:
    """Tell whether a single line is played there, the tune or a part of a trio."""
    trio = scene.music.texture is Texture.TRIO and keyboard.kind is KeyboardKind.MANUAL
    return trio or solo_keyboard(scene) is keyboard
