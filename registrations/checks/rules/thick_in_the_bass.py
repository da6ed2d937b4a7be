"""A 16 sounds under chords that nothing above crowns.

Why it matters: a 16 on a manual puts each note an octave down as well. In the left hand close
chords then lie where the ear no longer parts their notes, and the sound is thick. In full organ,
under a mixture, a trumpet or a chorus up to 2, it gives gravity instead; a single line bears it.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.compass import MIDDLE_C
from instruments.organ import Keyboard, KeyboardKind
from instruments.pitch import UNISON
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.kinds import is_chorus_mixture, is_chorus_reed, is_principal
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import COMMON_PRACTICE, ORGAN_WIKIBOOK
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.sounding import Part, Span

NAME, LEVEL, SUBJECT = "thick-in-the-bass", Level.ADVICE, Subject.HANDS
SOURCES = (ORGAN_WIKIBOOK, COMMON_PRACTICE)
EXAMPLE = "Great: Bourdon 16, Stopped Diapason 8 and Flute 4, for a hymn"

_DOUBLE = Fraction(16)
_CHORUS = frozenset(map(Fraction, (8, 4, 2)))


def check(scene: Scene) -> Iterator[Finding]:
    """Find the manuals under chords on which 16 sounds below middle C without a crown."""
    if scene.music.texture is not Texture.CHORDS:
        return
    for keyboard in judged_keyboards(scene):
        if keyboard.kind is KeyboardKind.MANUAL:
            yield from _thick(scene, keyboard)


def _thick(scene: Scene, keyboard: Keyboard) -> Iterator[Finding]:
    thick = [
        span
        for span in scene.spans_on(keyboard)
        if span.low < MIDDLE_C and _doubles(span) and _is_thick(span)
    ]
    if not thick:
        return
    low, high = hull(thick)
    keys = low, min(high, MIDDLE_C - 1)
    doubles = tuple(dict.fromkeys(part.stop for span in thick for part in _doubles(span)))
    shifted = {part.stop.id for span in thick for part in _doubles(span) if part.shift}
    yield Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {stops_words(doubles)} "
        f"{'sounds' if len(doubles) == 1 else 'sound'} at 16′ under chords: they turn thick.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=tuple(stop.id for stop in doubles),
            couplers=_lowering(scene, keyboard, shifted),
            keys=keys,
            lengths=(_DOUBLE,),
        ),
    )


def _doubles(span: Span) -> list[Part]:
    return [part for part in span.parts if part.length == _DOUBLE]


def _is_thick(span: Span) -> bool:
    """Tell whether 8 sounds too, and no mixture, chorus reed or principals at 8, 4 and 2.

    A 16 without an 8 is played an octave higher.
    """
    principals = {part.length for part in span.parts if is_principal(part.stop)}
    crowned = principals >= _CHORUS or any(
        is_chorus_mixture(part.stop) or is_chorus_reed(part.stop) for part in span.parts
    )
    return not crowned and any(part.length == UNISON for part in span.parts)


def _lowering(scene: Scene, keyboard: Keyboard, stops: set[str]) -> tuple[str, ...]:
    """Give the couplers that bring stops an octave lower."""
    via = {
        coupler
        for reach in scene.reached_on(keyboard.id)
        if reach.stop.id in stops and reach.shift < 0
        for coupler in reach.via
    }
    return tuple(one.id for one in scene.couplers if one.id in via and one.shift < 0)
