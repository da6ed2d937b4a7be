"""More than an octave is empty below a mutation.

Why it matters: a mutation melts into the sound when the pitches below it lead up to it: 8, 4, then
2 2/3. With the 4 missing the twelfth stands alone above the unison and is heard as a second tune;
from 8 straight to 1 3/5 the step is more than two octaves, and the third whistles by itself. A
principal, a string or a reed has overtones that bridge the step, a flute has none. It can be meant,
as a solo colour. In chords it almost never is.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.organ import Keyboard, Stop
from instruments.pitch import UNISON, interval_name, is_octave, length_typeset
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import is_mutation
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import AUDSLEY_1921, COMMON_PRACTICE, TONE_MODEL
from registrations.checks.steps import BREAKS, Step, wide_steps
from registrations.checks.words import lengths_words, on, stop_words
from registrations.sounding import Span, lengths_of
from registrations.standout import BLENDS_BELOW_DB, stand_outs_of

NAME, LEVEL, SUBJECT = "gap-below-mutation", Level.WARNING, Subject.PITCH
SOURCES = (AUDSLEY_1921, TONE_MODEL, COMMON_PRACTICE)
EXAMPLE = "Swell: Flute 8 and Tierce 1 3/5"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the mutations whose next lower pitch is further than an octave below.

    A step of less than two octaves that the overtones of what sounds bridge is none.
    """
    for keyboard in scene.played:
        gaps: dict[tuple[Stop, Fraction], list[tuple[Step, Span]]] = {}
        for span in scene.spans_on(keyboard):
            for stop, step in _gaps(span):
                gaps.setdefault((stop, step.length), []).append((step, span))
        for (stop, _), found in gaps.items():
            widest = max((step for step, _ in found), key=lambda step: step.ratio)
            keys = hull([span for step, span in found if step == widest])
            stand_out = _stand_out(scene, keyboard, keys[0], widest.length)
            level = _level(stand_out, widest)
            if level is not None:
                yield _finding(keyboard, stop, widest, keys, level, stand_out)


def _gaps(span: Span) -> Iterator[tuple[Stop, Step]]:
    """Give each mutation with too wide a step below.

    Where no octave of the unison sounds at all, the mutation is alone, which is another fault.
    """
    lengths = lengths_of([span])
    steps = {step.length: step for step in wide_steps(lengths) if not is_octave(step.length)}
    if not steps or not any(map(is_octave, lengths)):
        return
    for part in span.parts:
        if part.length in steps and is_mutation(part.stop):
            yield part.stop, steps[part.length]


def _level(stand_out: float | None, step: Step) -> Level | None:
    """Give the level by how far it stands out, one higher from two octaves; None for no matter.

    What has no tone in the model is taken to stand out.
    """
    blends = stand_out is not None and stand_out < BLENDS_BELOW_DB
    if step.ratio >= BREAKS:
        return Level.ADVICE if blends else Level.WARNING
    return None if blends else Level.ADVICE


def _stand_out(scene: Scene, keyboard: Keyboard, key: int, length: Fraction) -> float | None:
    """Give the dB by which a pitch stands out at a key of what sounds there and below.

    What lies above leads up to nothing. None where the model has no tone for it.
    """
    below = [one for one in scene.ranks_on(keyboard) if one.length >= length]
    found = stand_outs_of(below, scene.tuned, key, length)
    return max((one.decibels for one in found), default=None)


def _finding(
    keyboard: Keyboard,
    stop: Stop,
    step: Step,
    keys: tuple[int, int],
    level: Level,
    stand_out: float | None,
) -> Finding:
    measured = () if stand_out is None else (("stand_out_db", round(stand_out, 1)),)
    return Finding(
        NAME,
        level,
        f"{on(keyboard, keys)} {stop_words(stop)} is {interval_name(UNISON / step.ratio)} than the "
        f"next pitch below it, {length_typeset(step.below)}: {lengths_words(step.missing)} "
        f"{'is' if len(step.missing) == 1 else 'are'} missing between.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=(stop.id,),
            keys=keys,
            lengths=(step.length, *step.missing),
            numbers=(("step_cents", step.cents), *measured),
        ),
    )
