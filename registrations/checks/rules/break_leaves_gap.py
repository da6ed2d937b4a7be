"""A mixture breaks, and parts from the chorus beneath it over some keys.

Why it matters: a mixture is to lie close upon its chorus at every key, and it breaks back so that
it can. Where its lowest rank is more than an octave above the pitch next below, a hole is heard
between the two; where its highest has gone down below the highest of the chorus, the brilliance
that it gave ends at the break. Fill the hole, with a 2 or a mixture of lower pitch; leave a 1 in
where the mixture does not reach it.
"""

from collections.abc import Iterator
from fractions import Fraction

from instruments.mixtures import breaks
from instruments.organ import Keyboard, KeyboardKind, Stop
from instruments.pipework import composition_of
from instruments.pitch import cents, is_octave, length_typeset
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.kinds import is_chorus_mixture, is_principal
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import COMMON_PRACTICE, MIXTURE_ARTICLE
from registrations.checks.steps import Step, wide_steps
from registrations.checks.words import on, stop_words
from registrations.sounding import Span

NAME, LEVEL, SUBJECT = "break-leaves-gap", Level.ADVICE, Subject.PITCH
SOURCES = (MIXTURE_ARTICLE, COMMON_PRACTICE)
EXAMPLE = "Great: Principals 8, 4 and 2 and a Cymbale that begins at 1/2, without the Fourniture"

#: The least of a chorus beneath a mixture: octave and fifteenth, in the pedals an octave lower.
_CHORUS = {
    KeyboardKind.MANUAL: frozenset([Fraction(4), Fraction(2)]),
    KeyboardKind.PEDAL: frozenset([Fraction(8), Fraction(4)]),
}


def check(scene: Scene) -> Iterator[Finding]:
    """Find the keys at which a breaking mixture lies too far above its chorus, or beneath its top.

    A chorus with no octave or no fifteenth is another matter; a mixture whose breaks nobody told
    is not judged.
    """
    for keyboard in judged_keyboards(scene):
        mixtures = {
            reach.stop: breaks(composition_of(reach.stop))
            for reach in scene.reached_on(keyboard.id)
            if not reach.shift and is_chorus_mixture(reach.stop)
        }
        for stop, places in mixtures.items():
            if places:
                spans = scene.spans_on(keyboard)
                yield from _holes(keyboard, stop, spans)
                yield from _falls(keyboard, stop, spans)


def _holes(keyboard: Keyboard, stop: Stop, spans: tuple[Span, ...]) -> Iterator[Finding]:
    """Find where more than an octave is empty below a mixture; the widest hole is told."""
    holes: dict[Step, list[Span]] = {}
    for span in spans:
        own, others = _own(stop, span), {part.length for part in span.parts if part.stop != stop}
        if own and _CHORUS[keyboard.kind] <= others:
            below = min((length for length in others if length >= own[0]), default=own[0])
            for step in wide_steps((below, own[0])):
                holes.setdefault(step, []).append(span)
    if holes:
        widest = max(holes, key=lambda step: step.ratio)
        told = (
            f"begins at {length_typeset(widest.length)}, and the next pitch below it is "
            f"{length_typeset(widest.below)}: more than an octave is empty between."
        )
        yield _finding(keyboard, stop, holes[widest], told, (widest.length, widest.below))


def _falls(keyboard: Keyboard, stop: Stop, spans: tuple[Span, ...]) -> Iterator[Finding]:
    """Find where the chorus goes higher than its mixtures, which at other keys are above it."""
    crowned = False
    falls: dict[tuple[Fraction, Fraction], list[Span]] = {}
    for span in spans:
        own, top = _own(stop, span), _top(span)
        if own and top is not None:
            crowned = crowned or own[-1] < top
            if _crown(span) > top:
                falls.setdefault((own[-1], top), []).append(span)
    if crowned and falls:
        highest, top = max(falls)
        told = (
            f"goes no higher than {length_typeset(highest)} after it has broken, and the chorus "
            f"has a {length_typeset(top)}."
        )
        yield _finding(keyboard, stop, falls[highest, top], told, (highest, top))


def _own(stop: Stop, span: Span) -> tuple[Fraction, ...]:
    """Give the lengths of a mixture at its own pitch, longest first."""
    found = {part.length for part in span.parts if part.stop == stop and not part.shift}
    return tuple(sorted(found, reverse=True))


def _top(span: Span) -> Fraction | None:
    """Give the highest octave of the principals, without octave couplers."""
    return min(
        (
            part.length
            for part in span.parts
            if not part.shift and is_principal(part.stop) and is_octave(part.length)
        ),
        default=None,
    )


def _crown(span: Span) -> Fraction:
    """Give the highest pitch of the mixtures; there must be one."""
    return min(part.length for part in span.parts if is_chorus_mixture(part.stop))


def _finding(
    keyboard: Keyboard,
    stop: Stop,
    spans: list[Span],
    told: str,
    lengths: tuple[Fraction, Fraction],
) -> Finding:
    keys = hull(spans)
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {stop_words(stop)} {told}",
        Evidence(
            keyboards=(keyboard.id,),
            stops=(stop.id,),
            keys=keys,
            lengths=lengths,
            numbers=(("step_cents", abs(round(cents(lengths[0]) - cents(lengths[1]), 3))),),
        ),
    )
