"""A mixture sounds without the chorus that carries it.

Why it matters: a mixture is the crown of a chorus. Its ranks are short and they break back as the
keys go up, so it has no pitch of its own; over 8, 4 and 2 it is heard as brilliance, over less as a
jangle above an empty middle. Build from the bottom: 8, 4, 2, then the mixture, of principal
tone where the organ has it. In the pedals the same holds an octave lower.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from instruments.organ import Keyboard, KeyboardKind, Stop
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import is_chorus_mixture, is_chorus_reed, is_principal
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import CHORUS_ARTICLE, COMMON_PRACTICE, MIXTURE_ARTICLE
from registrations.checks.words import lengths_words, on, stops_words
from registrations.sounding import Part, Span

NAME, LEVEL, SUBJECT = "mixture-without-chorus", Level.WARNING, Subject.PITCH
SOURCES = (MIXTURE_ARTICLE, CHORUS_ARTICLE, COMMON_PRACTICE)
EXAMPLE = "Great: Open Diapason 8 and Mixture III"

_DOUBLE, _UNISON = Fraction(16), Fraction(8)


@dataclass(frozen=True, slots=True)
class _Lack:
    """What a chorus wants under its mixture: the lengths, and principal tone."""

    lengths: tuple[Fraction, ...]
    principals: bool
    level: Level


def check(scene: Scene) -> Iterator[Finding]:
    """Find the played keyboards on which a chorus mixture lacks pitches or principals below it."""
    for keyboard in scene.played:
        lacking: dict[_Lack, list[Span]] = {}
        for span in scene.spans_on(keyboard):
            lack = _lack(keyboard, span)
            if lack is not None:
                lacking.setdefault(lack, []).append(span)
        if lacking:
            worst = min(lacking, key=lambda one: (one.level is Level.ADVICE, -len(one.lengths)))
            yield _finding(keyboard, worst, lacking[worst])


def _lack(keyboard: Keyboard, span: Span) -> _Lack | None:
    crown = [part for part in span.parts if is_chorus_mixture(part.stop)]
    if not crown:
        return None
    chorus = [part for part in span.parts if not is_chorus_mixture(part.stop)]
    base, octave, fifteenth = _wanted(keyboard, chorus)
    sounding = {part.length for part in chorus}
    missing = [] if sounding & {base, _DOUBLE} else [base]
    missing += [] if octave in sounding else [octave]
    if missing:
        return _Lack(tuple(missing), False, Level.WARNING)
    bare = not any(is_principal(part.stop) or is_chorus_reed(part.stop) for part in chorus)
    short = fifteenth not in sounding | {part.length for part in crown}
    if bare or short:
        return _Lack((fifteenth,) if short else (), bare, Level.ADVICE)
    return None


def _wanted(keyboard: Keyboard, chorus: list[Part]) -> tuple[Fraction, Fraction, Fraction]:
    """Give unison, octave and fifteenth; the pedals' are an octave lower where their 16 sounds."""
    low = keyboard.kind is KeyboardKind.PEDAL and any(part.length == _DOUBLE for part in chorus)
    base = _DOUBLE if low else _UNISON
    return base, base / 2, base / 4


def _finding(keyboard: Keyboard, lack: _Lack, found: list[Span]) -> Finding:
    mixtures: tuple[Stop, ...] = tuple(
        dict.fromkeys(
            part.stop for span in found for part in span.parts if is_chorus_mixture(part.stop)
        )
    )
    wanted = ([f"no {lengths_words(lack.lengths)}"] if lack.lengths else []) + (
        ["no principal"] if lack.principals else []
    )
    keys = hull(found)
    return Finding(
        NAME,
        lack.level,
        f"{on(keyboard, keys)} {stops_words(mixtures)} "
        f"{'has' if len(mixtures) == 1 else 'have'} {' and '.join(wanted)} below.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=tuple(stop.id for stop in mixtures),
            keys=keys,
            lengths=lack.lengths,
        ),
    )
