"""The pedals are much softer, or much louder, than the hands.

Why it matters: the bass is one voice of the harmony, a little stronger than the rest and no more.
Too soft, the chords stand on nothing; too loud, they are played over. As the hands grow the pedals
grow with them: another stop, a coupler, a 4. Swell boxes are not reckoned with: behind closed
shutters the hands are softer than they are taken to be here.
"""

import math
from collections.abc import Iterator

from instruments.organ import Keyboard, KeyboardKind, Organ
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, TONE_MODEL
from registrations.checks.words import on, the
from registrations.combination import Player
from registrations.spectrum import extremes, level_of

NAME, LEVEL, SUBJECT = "pedal-out-of-balance", Level.ADVICE, Subject.PEDAL
SOURCES = (COMMON_PRACTICE, TONE_MODEL)
EXAMPLE = "Great: Principals 8, 4 and 2 and Trumpet 8; Pedal: Bourdon 16 and Bass Flute 8"

#: One voice against one voice: c of the pedals and c1 of the hands.
_FEET, _HANDS = 12, 24
#: Dynamic steps from the softest stop of an organ to all stops together, and the least that one of
#: them is, so that a small organ has steps that can be heard; common practice, no source, and the
#: decibels are assumed.
STEPS, LEAST_STEP_DB = 5, 6.0


def step_db(organ: Organ) -> float:
    """Give the decibels of one dynamic step of an organ, a fifth of all that it can do."""
    between = extremes(organ)
    whole = 0.0 if between is None else between.loudest - between.softest
    return max(whole / STEPS, LEAST_STEP_DB)


def check(scene: Scene) -> Iterator[Finding]:
    """Find pedals that are more than a dynamic step from every keyboard of the hands, one way.

    In a solo they belong to the accompaniment; a tune in the pedals is another matter.
    """
    if scene.soloist is Player.FEET:
        return
    for pedal in scene.pedals_played:
        feet = _level(scene, pedal, _FEET)
        hands = [(_level(scene, one, _HANDS), one) for one in _manuals(scene)]
        sounding = [(feet - level, one) for level, one in hands if not math.isinf(level)]
        if math.isinf(feet) or not sounding:
            continue
        apart, nearest = min(sounding, key=lambda one: abs(one[0]))
        step = step_db(scene.organ)
        if abs(apart) > step and all(apart * other > 0 for other, _ in sounding):
            yield _finding(pedal, nearest, feet, apart, step)


def _manuals(scene: Scene) -> tuple[Keyboard, ...]:
    """Give the keyboards that the pedals are the bass of."""
    return accompanying_keyboards(scene) or tuple(
        one
        for one in scene.played
        if one.kind is KeyboardKind.MANUAL and one not in scene.pedals_played
    )


def _level(scene: Scene, keyboard: Keyboard, key: int) -> float:
    return level_of(scene.reached_on(keyboard.id), scene.tuned, key)


def _finding(pedal: Keyboard, manual: Keyboard, feet: float, apart: float, step: float) -> Finding:
    return Finding(
        NAME,
        LEVEL,
        f"{on(pedal)} a note is about {abs(apart):.0f} dB {'louder' if apart > 0 else 'softer'} "
        f"than one on {the(manual.name)}: more than one dynamic step of five, "
        f"which is {step:.0f} dB here.",
        Evidence(
            keyboards=(pedal.id, manual.id),
            numbers=(
                ("pedal_db", round(feet, 1)),
                ("manual_db", round(feet - apart, 1)),
                ("step_db", round(step, 1)),
            ),
        ),
    )
