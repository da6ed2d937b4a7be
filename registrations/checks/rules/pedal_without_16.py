"""The feet play and no 16 sounds under them.

Why it matters: the pedals carry the bass, which is written to sound an octave below the left hand.
Without a 16 the bass line stands among the manual voices and may even cross above the tenor. When
the feet have the tune, a 4 or an 8 alone is right; in a trio an 8 alone can be; where the organ
has no 16 for the pedals it must do.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.organ import Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.offered import lengths_offered
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, ORGAN_WIKIBOOK
from registrations.checks.words import lengths_words, on
from registrations.combination import Player, Texture
from registrations.sounding import lengths_of

NAME, LEVEL, SUBJECT = "pedal-without-16", Level.WARNING, Subject.PEDAL
SOURCES = (ORGAN_WIKIBOOK, COMMON_PRACTICE)
EXAMPLE = "Pedal: Bass Flute 8 alone, for a hymn"

_BASS = Fraction(16)


def check(scene: Scene) -> Iterator[Finding]:
    """Find the keyboards under the feet on which 8 is the lowest that sounds."""
    if scene.soloist is Player.FEET:
        return
    for keyboard in scene.pedals_played:
        lengths = lengths_of(scene.spans_on(keyboard))
        if lengths and lengths[0] < _BASS:
            yield Finding(
                NAME,
                _level(scene, keyboard),
                f"{on(keyboard)} nothing lower than {lengths_words(lengths[:1])} sounds: "
                "the bass has no 16′.",
                Evidence(keyboards=(keyboard.id,), lengths=lengths),
            )


def _level(scene: Scene, keyboard: Keyboard) -> Level:
    has_bass = any(length >= _BASS for length in lengths_offered(scene.organ, keyboard))
    return LEVEL if has_bass and scene.music.texture is not Texture.TRIO else Level.ADVICE
