"""Order: a service and the items of its order, as frozen values."""

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum


class PieceKind(StrEnum):
    """What sort of music a piece is."""

    HYMN = "hymn"
    PSALM = "psalm"
    CANTICLE = "canticle"
    SETTING = "setting"
    ANTHEM = "anthem"
    VOLUNTARY = "voluntary"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Piece:
    """The music of an item. ``verses`` counts the verses of a hymn, 0 where there are none."""

    title: str
    kind: PieceKind = PieceKind.OTHER
    composer: str = ""
    tune: str = ""
    metre: str = ""
    key: str = ""
    verses: int = 0

    @property
    def credit(self) -> str:
        """What stands under the title: the tune of a hymn with its metre, and the composer."""
        parts = (self.tune, self.metre, self.composer) if self.tune else (self.composer,)
        return " · ".join(part for part in parts if part)


@dataclass(frozen=True, slots=True)
class Item:
    """One line of the order of service; ``label`` says its place (“Offertory hymn”)."""

    id: int
    label: str
    piece: Piece
    player: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Service:
    """An act of worship: local wall date and time, title, church, items in order."""

    id: int
    day: date
    starts: time
    title: str
    church: str = ""
    items: tuple[Item, ...] = ()
