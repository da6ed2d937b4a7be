"""The accompaniment drowns the solo.

Why it matters: one note of the tune is heard against three or four of the accompaniment, so the
solo must be the stronger by itself. A colour of its own lets it carry though it is a little
softer; where it is much softer the tune is lost. Draw less for the accompaniment, or more for the
tune. What stands in a swell box is reckoned with the box closed in the accompaniment.
"""

import math
from collections.abc import Iterator

from instruments.organ import Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards, divisions_at, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, TONE_MODEL
from registrations.checks.words import the
from registrations.combination import Player
from registrations.sounding import Reach
from registrations.spectrum import level_of

NAME, LEVEL, SUBJECT = "solo-under-accompaniment", Level.WARNING, Subject.HANDS
SOURCES = (COMMON_PRACTICE, TONE_MODEL)
EXAMPLE = "Solo on the Choir (Dulciana 8), left hand on the Great (Open Diapason 8, Principal 4)"

#: The tune’s note, in the middle of what each player has: g1, g and tenor C; against it c1 e1 g1.
_NOTES: dict[Player, int] = {Player.RIGHT: 31, Player.LEFT: 19, Player.FEET: 12}
_CHORD = (24, 28, 31)
#: By so much the model may be wrong, and a colour of its own make up; assumed, no source.
MARGIN_DB = 6.0
#: What an ordinary swell box takes away when it is closed, at the least; from memory, 8 to 15.
BOX_DB = 8.0


def check(scene: Scene) -> Iterator[Finding]:
    """Find a solo of which a note is more than the margin softer than a chord accompanying it."""
    solo = solo_keyboard(scene)
    if solo is None or scene.soloist is None:
        return
    tune = level_of(scene.reached_on(solo.id), scene.tuned, _NOTES[scene.soloist])
    for keyboard in accompanying_keyboards(scene):
        chord = _accompaniment(scene, keyboard, divisions_at(scene, solo))
        if math.isinf(tune) or chord - tune <= MARGIN_DB:
            continue
        yield Finding(
            NAME,
            LEVEL,
            f"One note of the tune on {the(solo.name)} is about {chord - tune:.0f} dB softer than "
            f"three of the accompaniment on {the(keyboard.name)}.",
            Evidence(
                keyboards=(solo.id, keyboard.id),
                numbers=(("solo_db", round(tune, 1)), ("accompaniment_db", round(chord, 1))),
            ),
        )


def _accompaniment(scene: Scene, keyboard: Keyboard, solo: frozenset[str]) -> float:
    """Give the dB of the chord against an Open Diapason’s note, swell boxes closed.

    What a coupler brings of the solo's divisions is another fault and left out.
    """
    boxes = {one.id for one in scene.organ.divisions if one.enclosed}
    own = [reach for reach in scene.reached_on(keyboard.id) if reach.division not in solo]
    boxed = [reach for reach in own if reach.division in boxes]
    unboxed = [reach for reach in own if reach.division not in boxes]
    power = _power(scene, unboxed) + _power(scene, boxed) * 10 ** (-BOX_DB / 10)
    return 10 * math.log10(power) if power > 0 else -math.inf


def _power(scene: Scene, reached: list[Reach]) -> float:
    """Give the power of the chord; no octave coupler brings one of its notes to another."""
    levels = (level_of(reached, scene.tuned, key) for key in _CHORD)
    return math.fsum(10 ** (level / 10) for level in levels)
