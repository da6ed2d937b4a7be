"""Registration: the combinations for one piece on one organ, in order, each at its cue."""

from dataclasses import dataclass, field

from instruments.organ import Organ
from registrations.combination import Combination, Music


@dataclass(frozen=True, slots=True)
class Change:
    """A combination and the place in the music where it is set (verse 3, bar 17, words).

    ``accepted`` are the fingerprints of findings that are meant (registrations/acceptance.py).
    """

    cue: str
    combination: Combination
    music: Music = field(default_factory=Music)
    note: str = ""
    accepted: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Registration:
    """All changes of a piece on an organ; the first is what is set before it begins."""

    organ: Organ
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, slots=True)
class Moves:
    """What the player draws and puts in to go from one combination to the next (ids)."""

    draw: frozenset[str] = frozenset()
    put_in: frozenset[str] = frozenset()

    def __len__(self) -> int:
        return len(self.draw) + len(self.put_in)


def moves(before: Combination, after: Combination) -> Moves:
    """Give the moves from one combination to another; none when the same things are drawn."""
    return Moves(after.drawn - before.drawn, before.drawn - after.drawn)
