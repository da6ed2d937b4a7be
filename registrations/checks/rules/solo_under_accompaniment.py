"""The accompaniment drowns the solo.

Why it matters: one note of the tune is heard against three or four of the accompaniment, so the
solo must be the stronger by itself. A colour of its own lets it carry though it is a little
softer; where it is much softer the tune is lost. Draw less for the accompaniment, or more for the
tune. Swell boxes are not reckoned with: a closed box on the accompaniment helps.
"""

import math
from collections.abc import Iterator

from instruments.organ import Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.roles import accompanying_keyboards, solo_keyboard
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, TONE_MODEL
from registrations.checks.words import the
from registrations.combination import Player
from registrations.spectrum import spectrum_of

NAME, LEVEL, SUBJECT = "solo-under-accompaniment", Level.WARNING, Subject.HANDS
SOURCES = (COMMON_PRACTICE, TONE_MODEL)
EXAMPLE = "Solo on the Choir (Dulciana 8), left hand on the Great (Open Diapason 8, Principal 4)"

#: The tune’s note, in the middle of what each player has: g1, g and tenor C; against it c1 e1 g1.
_NOTES: dict[Player, int] = {Player.RIGHT: 31, Player.LEFT: 19, Player.FEET: 12}
_CHORD = (24, 28, 31)
#: By so much the model may be wrong, and a colour of its own make up; assumed, no source.
MARGIN_DB = 6.0


def check(scene: Scene) -> Iterator[Finding]:
    """Find a solo of which a note is more than the margin softer than a chord accompanying it."""
    solo = solo_keyboard(scene)
    if solo is None or scene.soloist is None:
        return
    tune = _level(scene, solo, _NOTES[scene.soloist])
    for keyboard in accompanying_keyboards(scene):
        chord = _level(scene, keyboard, *_CHORD)
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


def _level(scene: Scene, keyboard: Keyboard, *keys: int) -> float:
    return spectrum_of(scene.ranks_on(keyboard), scene.tuned, *keys).level
