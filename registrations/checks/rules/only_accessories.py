"""Couplers or tremulants are drawn and no stop.

Why it matters: a coupler brings stops from one keyboard to another and a tremulant shakes the wind
of the stops that are drawn. Neither has pipes of its own: with no stop drawn the organ is silent.
"""

from collections.abc import Iterator

from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION
from registrations.checks.words import listed

NAME, LEVEL, SUBJECT = "only-accessories", Level.FAULT, Subject.ACCESSORIES
SOURCES = (BY_CONSTRUCTION,)
EXAMPLE = "Swell to Great, and nothing else"


def check(scene: Scene) -> Iterator[Finding]:
    """Find couplers and tremulants without any stop; a console with nothing drawn is meant."""
    couplers = scene.couplers
    tremulants = scene.tremulants
    if scene.stops or not (couplers or tremulants):
        return
    names = [one.name for one in couplers]
    names += [f"{one.name} ({division.name})" for division, one in tremulants]
    yield Finding(
        NAME,
        LEVEL,
        f"Only {listed(names)} {'is' if len(names) == 1 else 'are'} drawn and no stop: "
        "nothing will sound.",
        Evidence(
            couplers=tuple(one.id for one in couplers),
            tremulants=tuple(one.id for _, one in tremulants),
        ),
    )
