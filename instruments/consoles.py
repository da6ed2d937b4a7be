"""Console: where the controls of an organ stand, its pistons, and which keyboard lies on top."""

from dataclasses import dataclass
from enum import StrEnum


class Panel(StrEnum):
    """The part of a console on which a control stands."""

    LEFT = "left"
    RAIL = "rail"
    RIGHT = "right"
    OTHER = "other"


class PistonKind(StrEnum):
    """What a piston moves: the whole organ, one division, or one control in and out by turns."""

    GENERAL = "general"
    DIVISIONAL = "divisional"
    REVERSIBLE = "reversible"


class Touch(StrEnum):
    """What presses a piston."""

    THUMB = "thumb"
    TOE = "toe"
    BOTH = "thumb and toe"


PANEL_WORDS: dict[Panel, str] = {
    Panel.LEFT: "left jamb",
    Panel.RAIL: "rail over the manuals",
    Panel.RIGHT: "right jamb",
    Panel.OTHER: "elsewhere",
}


@dataclass(frozen=True, slots=True)
class Place:
    """Where one control stands: columns count from the left, rows from the top, both from 1."""

    control: str
    panel: Panel
    column: int
    row: int


@dataclass(frozen=True, slots=True)
class Piston:
    """One piston; a divisional names its ``division``, a reversible the ``control`` it moves."""

    id: str
    name: str
    kind: PistonKind = PistonKind.GENERAL
    division: str | None = None
    control: str | None = None
    touch: Touch = Touch.THUMB


@dataclass(frozen=True, slots=True)
class Console:
    """All that is known of a console; what nobody has said yet is empty.

    ``keyboards`` are ids from the top down. ``knobs_move``: whether the controls move when a piston
    is pressed, None where it is not known. ``levels`` are memory levels, 0 without a memory.
    """

    keyboards: tuple[str, ...] = ()
    places: frozenset[Place] = frozenset()
    pistons: tuple[Piston, ...] = ()
    knobs_move: bool | None = None
    levels: int = 0
    sequencer: bool = False

    def place(self, control: str) -> Place | None:
        """Give where a control stands, None when it has no place."""
        return next((one for one in self.places if one.control == control), None)

    def places_in_order(self) -> tuple[Place, ...]:
        """Give the places panel by panel, each column from the top down."""
        panels = list(Panel)
        return tuple(
            sorted(
                self.places,
                key=lambda one: (panels.index(one.panel), one.column, one.row, one.control),
            )
        )


#: A console of which nothing is known.
UNKNOWN = Console()


def piston_fault(piston: Piston) -> str:
    """Say what a piston lacks or has too much for its kind; empty where it is in order."""
    has = (piston.division is not None, piston.control is not None)
    wanted = {
        PistonKind.GENERAL: ((False, False), "A general piston moves everything: it names nothing"),
        PistonKind.DIVISIONAL: ((True, False), "A divisional piston names its division only"),
        PistonKind.REVERSIBLE: ((False, True), "A reversible piston names its one control only"),
    }[piston.kind]
    return "" if has == wanted[0] else f"{wanted[1]}."
