"""A coupler is drawn that carries no drawn stop.

Why it matters: a coupler adds only what is drawn in the division it comes from. Drawn over an empty
division it does nothing now, and it is a trap for later: the next stop drawn there will sound where
nobody expects it.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, COUPLER_ARTICLE
from registrations.checks.words import the

NAME, LEVEL, SUBJECT = "silent-coupler", Level.WARNING, Subject.COUPLERS
SOURCES = (COUPLER_ARTICLE, BY_CONSTRUCTION)
EXAMPLE = "Great: Open Diapason 8; Swell to Great, nothing drawn on the Swell"


def check(scene: Scene) -> Iterator[Finding]:
    """Find the drawn couplers through which nothing is reached; unison-off only takes away."""
    carrying = {coupler for reach in scene.reaches for coupler in reach.via}
    for coupler in scene.couplers:
        if coupler.unison_off or coupler.id in carrying:
            continue
        source = scene.organ.division(coupler.source)
        yield Finding(
            NAME,
            LEVEL,
            f"{coupler.name} is drawn but carries nothing: no stop of {the(source.name)} "
            "sounds through it.",
            Evidence(keyboards=(coupler.target,), couplers=(coupler.id,)),
        )
