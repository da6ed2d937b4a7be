"""An octave is left out between two that sound.

Why it matters: octaves make one tone because each is carried by the octave below it. Over an 8
with no 4 the 2 is heard by itself, as a second player two octaves up, and the middle of the chords
is thin. In the pedals a 4 over a 16 leaves the bass without its line. It is an old and good colour
for a single line, 8 and 2 or 8 and 1; for chords ask yourself whether it is meant.
"""

from collections.abc import Iterator
from dataclasses import replace

from instruments.organ import Keyboard, KeyboardKind, Stop
from instruments.pitch import UNISON, is_octave, length_typeset
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.kinds import is_chorus_mixture, is_compound
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import CHORUS_ARTICLE, COMMON_PRACTICE
from registrations.checks.steps import Step, wide_steps
from registrations.checks.words import lengths_words, on, stops_words
from registrations.combination import Texture
from registrations.sounding import Span, lengths_of

NAME, LEVEL, SUBJECT = "octave-gap", Level.ADVICE, Subject.PITCH
SOURCES = (CHORUS_ARTICLE, COMMON_PRACTICE)
EXAMPLE = "Great: Principal 8 and Fifteenth 2, for a hymn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find, in chords, the octaves whose next lower pitch is further than an octave below.

    What stands over an off-unison pitch, and a 16 on a manual with no 8, are other matters.
    """
    if scene.music.texture is not Texture.CHORDS:
        return
    for keyboard in judged_keyboards(scene):
        lowest = None if keyboard.kind is KeyboardKind.PEDAL else UNISON
        gaps: dict[Step, list[Span]] = {}
        for span in scene.spans_on(keyboard):
            for step in _gaps(span):
                if lowest is None or step.below <= lowest:
                    gaps.setdefault(step, []).append(span)
        for step, spans in gaps.items():
            yield _finding(keyboard, step, spans)


def _gaps(span: Span) -> list[Step]:
    """Give the wide steps from an octave stop down to what sounds below; mixtures are apart."""
    sounding = tuple(part for part in span.parts if not is_chorus_mixture(part.stop))
    steps = wide_steps(lengths_of([replace(span, parts=sounding)]))
    return [
        step
        for step in steps
        if is_octave(step.length)
        and any(not is_compound(one.stop) and one.length == step.length for one in sounding)
    ]


def _finding(keyboard: Keyboard, step: Step, spans: list[Span]) -> Finding:
    keys = hull(spans)
    stops: tuple[Stop, ...] = tuple(
        dict.fromkeys(
            part.stop
            for span in spans
            for part in span.parts
            if part.length == step.length and not is_compound(part.stop)
        )
    )
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {stops_words(stops)} "
        f"{'stands' if len(stops) == 1 else 'stand'} over {length_typeset(step.below)} with no "
        f"{lengths_words(step.octaves)} between.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=tuple(stop.id for stop in stops),
            keys=keys,
            lengths=(step.length, *step.octaves),
            numbers=(("step_cents", step.cents),),
        ),
    )
