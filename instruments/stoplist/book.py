"""Book: what has been read of a list so far."""

import re
from dataclasses import dataclass, field

from instruments.compass import Compass
from instruments.organ import Coupling, Half, Stop, Tremulant
from instruments.stoplist.couplerline import CouplerLine
from instruments.stoplist.reading import Assumed, LineRead, Unread
from instruments.stoplist.stopline import StopLine
from instruments.stoplist.tables import PEDAL_ROLE, plain


@dataclass(slots=True)
class Part:
    """A division while its lines are read.

    ``number`` is that of its manual, 0 where unknown; ``host`` the division whose keyboard it has.
    """

    name: str
    role: str
    number: int = 0
    enclosed: bool = False
    floating: bool = False
    host: str = ""
    compass: Compass | None = None
    stops: list[Stop] = field(default_factory=list)
    tremulants: list[Tremulant] = field(default_factory=list)

    @property
    def is_pedal(self) -> bool:
        """Whether feet play it."""
        return self.role == PEDAL_ROLE

    @property
    def slug(self) -> str:
        """The division's id."""
        return slug_of(self.name)


@dataclass(slots=True)
class Book:
    """What has been read so far, and where in the list the reader is."""

    language: str = "en"
    parts: list[Part] = field(default_factory=list)
    current: Part | None = None
    section: str = "stops"
    half: Half | None = None
    numbered: bool = False
    unfinished: list[tuple[int, Part, int, StopLine]] = field(default_factory=list)
    couplers: list[tuple[int, CouplerLine]] = field(default_factory=list)
    accessories: list[str] = field(default_factory=list)
    titles: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    compasses: dict[bool, Compass] = field(default_factory=dict)
    pitch: float | None = None
    temperament: str = "equal"
    coupling: Coupling = Coupling.DIRECT
    told: str = ""
    numbers: dict[str, str] = field(default_factory=dict)
    unread: list[Unread] = field(default_factory=list)
    assumed: list[Assumed] = field(default_factory=list)
    lines: list[LineRead] = field(default_factory=list)
    tries: dict[str, int] = field(default_factory=dict)
    taken: set[str] = field(default_factory=set)

    def slug(self, text: str) -> str:
        """Give an id of small letters that nothing in the list has yet."""
        base = slug_of(text)
        slug, number = base, self.tries.get(base, 1)
        while slug in self.taken:
            number += 1
            slug = f"{base}-{number}"
        self.tries[base] = number
        self.taken.add(slug)
        return slug

    def assume(self, number: int, what: str) -> None:
        """Note a guess made for a line."""
        self.assumed.append(Assumed(number, what))


def slug_of(text: str) -> str:
    """Give text as an id: small plain letters, figures and hyphens."""
    return re.sub(r"[^a-z0-9/]+", "-", plain(text)).strip("-") or "control"
