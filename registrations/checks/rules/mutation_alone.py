"""Only off-unison pitches sound under a hand.

Why it matters: a twelfth alone plays every tune a twelfth too high, in the wrong key; a tierce
alone plays it in another wrong key still. Mutations colour a unison that is heard beneath them.
Draw an 8 (or a 4) with them, or put them in.
"""

from collections.abc import Iterator

from instruments.pitch import is_octave
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.kinds import is_chorus_mixture
from registrations.checks.scene import Scene, hull
from registrations.checks.sources import AUDSLEY_1921, COMMON_PRACTICE
from registrations.checks.words import on, stops_words
from registrations.sounding import Span, lengths_of

NAME, LEVEL, SUBJECT = "mutation-alone", Level.WARNING, Subject.PITCH
SOURCES = (AUDSLEY_1921, COMMON_PRACTICE)
EXAMPLE = "Great: Twelfth 2 2/3 alone"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the played keyboards that sound no unison and no octave over some keys."""
    for keyboard in scene.played:
        bare = [span for span in scene.spans_on(keyboard) if span.parts and is_bare(span)]
        if not bare:
            continue
        stops = tuple(dict.fromkeys(part.stop for span in bare for part in span.parts))
        keys = hull(bare)
        yield Finding(
            NAME,
            LEVEL,
            f"{on(keyboard, keys)} only {stops_words(stops)} "
            f"{'sounds' if len(stops) == 1 else 'sound'}: there is no unison or octave to colour.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                keys=keys,
                lengths=lengths_of(bare),
            ),
        )


def is_bare(span: Span) -> bool:
    """Tell whether all that sounds is off-unison; a chorus mixture has a rule of its own."""
    return not any(is_octave(part.length) or is_chorus_mixture(part.stop) for part in span.parts)
