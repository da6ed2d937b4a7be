"""A rank that sounds a third crowns full chords, with a chorus and its mixture.

Why it matters: the third that a tierce sounds above each note meets the other notes of a chord, and
above all a major third meets the minor chord it is not part of. Most temperaments make the keys'
own thirds wider than the rank's, too. A plenum of octaves and fifths stays clear; the tierce
belongs to a Cornet, a tune, a dialogue. Where the organ has no other mixture the builder meant it.
"""

from collections.abc import Iterator

from instruments.organ import Keyboard, Stop
from instruments.pipework import pitches_of
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.kinds import is_chorus_mixture, is_principal, is_third
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import BEDOS_1766, COMMON_PRACTICE
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.sounding import Span

NAME, LEVEL, SUBJECT = "tierce-in-full-chords", Level.ADVICE, Subject.PITCH
SOURCES = (BEDOS_1766, COMMON_PRACTICE)
EXAMPLE = "Great: Principals 8, 4 and 2, Mixture and Tierce 1 3/5, for a hymn"


def check(scene: Scene) -> Iterator[Finding]:
    """Find, in chords, the third-sounding stops over principals of two pitches and a mixture."""
    if scene.music.texture is not Texture.CHORDS:
        return
    for keyboard in judged_keyboards(scene):
        found: dict[tuple[Stop, ...], list[Span]] = {}
        for span in scene.spans_on(keyboard):
            stops = _thirds(scene, span)
            if stops:
                found.setdefault(stops, []).append(span)
        if found:
            yield _finding(keyboard, found)


def _thirds(scene: Scene, span: Span) -> tuple[Stop, ...]:
    """Give the stops that sound a third in a plenum that has, or could have, a mixture without."""
    crown = {part.stop: part.division for part in span.parts if is_chorus_mixture(part.stop)}
    principals = {part.length for part in span.parts if is_principal(part.stop)}
    if not crown or len(principals) < 2:
        return ()
    thirds = tuple(dict.fromkeys(part.stop for part in span.parts if is_third(part.length)))
    meant = set(thirds) == set(crown) and not _has_another(scene, frozenset(crown.values()))
    return () if meant else thirds


def _has_another(scene: Scene, divisions: frozenset[str]) -> bool:
    """Tell whether some divisions have a chorus mixture that sounds no third anywhere."""
    return any(
        is_chorus_mixture(stop)
        and not any(is_third(length) for zone in pitches_of(stop) for length in zone.lengths)
        for division, stop in scene.organ.stops()
        if division.id in divisions
    )


def _finding(keyboard: Keyboard, found: dict[tuple[Stop, ...], list[Span]]) -> Finding:
    stops = tuple(dict.fromkeys(stop for thirds in found for stop in thirds))
    spans = [span for some in found.values() for span in some]
    keys = hull(spans)
    lengths = {one.length for span in spans for one in span.parts if is_third(one.length)}
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard, keys)} {stops_words(stops)} "
        f"{'sounds' if len(stops) == 1 else 'sound'} a third above every note of the chords.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=tuple(stop.id for stop in stops),
            keys=keys,
            lengths=tuple(sorted(lengths, reverse=True)),
        ),
    )
