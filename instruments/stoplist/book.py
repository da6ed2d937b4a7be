"""Book: what has been read of a list so far."""

import re
from dataclasses import dataclass, field

from instruments.compass import Compass
from instruments.organ import Stop, Tremulant
from instruments.stoplist.couplerline import CouplerLine
from instruments.stoplist.reading import Assumed, LineRead, Unread


@dataclass(slots=True)
class Part:
    """A division while its lines are read."""

    name: str
    enclosed: bool = False
    floating: bool = False
    compass: Compass | None = None
    stops: list[Stop] = field(default_factory=list)
    tremulants: list[Tremulant] = field(default_factory=list)


@dataclass(slots=True)
class Book:
    """What has been read so far."""

    parts: list[Part] = field(default_factory=list)
    current: Part | None = None
    couplers: list[tuple[int, CouplerLine]] = field(default_factory=list)
    accessories: list[str] = field(default_factory=list)
    titles: list[str] = field(default_factory=list)
    compasses: dict[bool, Compass] = field(default_factory=dict)
    unread: list[Unread] = field(default_factory=list)
    assumed: list[Assumed] = field(default_factory=list)
    lines: list[LineRead] = field(default_factory=list)
    taken: set[str] = field(default_factory=set)

    def slug(self, text: str) -> str:
        """Give an id of small letters that nothing in the list has yet."""
        base = re.sub(r"[^a-z0-9/]+", "-", text.lower()).strip("-") or "control"
        slug, number = base, 1
        while slug in self.taken:
            number += 1
            slug = f"{base}-{number}"
        self.taken.add(slug)
        return slug
