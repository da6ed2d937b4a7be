"""Jamb: the controls as they stand at the console, panel by panel."""

from collections.abc import Iterator
from dataclasses import dataclass

from instruments.consoles import PANEL_WORDS, Panel, Piston, PistonKind, Place
from instruments.figures import coupler_figure, stop_figure, stop_name
from instruments.organ import Division, KeyboardKind, Organ

#: More controls than this stand in a second column; our own choice.
_LONGEST_COLUMN = 8
_COUPLERS_IN_A_ROW = 12


@dataclass(frozen=True, slots=True)
class Knob:
    """The face of one control: its figure and name; ``home`` is its division, or Couplers."""

    id: str
    figure: str
    name: str
    home: str

    @property
    def label(self) -> str:
        """Name it in a sentence: ``Principal 4′ (Great)``."""
        return f"{self.name} {self.figure}".strip() + f" ({self.home})"


@dataclass(frozen=True, slots=True)
class PanelMap:
    """The controls of one panel, row by row from the top; None where nothing stands."""

    panel: Panel
    rows: tuple[tuple[Knob | None, ...], ...]

    @property
    def words(self) -> str:
        """Name the panel."""
        return PANEL_WORDS[self.panel]


def knobs(organ: Organ) -> tuple[Knob, ...]:
    """Give the faces of all controls: each division's stops and tremulants, then the couplers."""
    return (
        *(knob for division in organ.divisions for knob in _of_division(division)),
        *(Knob(one.id, coupler_figure(one), one.name, "Couplers") for one in organ.couplers),
    )


def _of_division(division: Division) -> Iterator[Knob]:
    for stop in division.stops:
        yield Knob(stop.id, stop_figure(stop), stop_name(stop), division.name)
    for tremulant in division.tremulants:
        yield Knob(tremulant.id, "", tremulant.name, division.name)


def panels(organ: Organ, spare: int = 0) -> tuple[PanelMap, ...]:
    """Give the map of every panel on which anything stands.

    With ``spare`` every panel, each with so many empty rows and columns more.
    """
    faces = {knob.id: knob for knob in knobs(organ)}
    maps = (_map(panel, organ, faces, spare) for panel in Panel)
    return tuple(one for one in maps if one.rows)


def _map(panel: Panel, organ: Organ, faces: dict[str, Knob], spare: int) -> PanelMap:
    spots = {
        (one.row, one.column): faces[one.control]
        for one in organ.console.places
        if one.panel is panel and one.control in faces
    }
    rows = range(1, max((row for row, _ in spots), default=0) + spare + 1)
    columns = range(1, max((column for _, column in spots), default=0) + spare + 1)
    return PanelMap(panel, tuple(tuple(spots.get((r, c)) for c in columns) for r in rows))


def unplaced(organ: Organ) -> tuple[Knob, ...]:
    """Give the controls of which nobody has said where they stand."""
    placed = {one.control for one in organ.console.places}
    return tuple(knob for knob in knobs(organ) if knob.id not in placed)


def usual_places(organ: Organ) -> frozenset[Place]:
    """Propose a place for every control, to be set right by whoever sees the console.

    Pedal and every second manual division on the left, the others on the right, couplers on the
    rail: common practice, no source.
    """
    columns = {Panel.LEFT: 0, Panel.RIGHT: 0}
    places: list[Place] = []
    for division, panel in _sides(organ):
        faces = [knob.id for knob in _of_division(division)]
        for at, control in enumerate(faces):
            column, row = divmod(at, _LONGEST_COLUMN)
            places.append(Place(control, panel, columns[panel] + column + 1, row + 1))
        columns[panel] += -(-len(faces) // _LONGEST_COLUMN)
    for at, coupler in enumerate(organ.couplers):
        row, column = divmod(at, _COUPLERS_IN_A_ROW)
        places.append(Place(coupler.id, Panel.RAIL, column + 1, row + 1))
    return frozenset(places)


def _sides(organ: Organ) -> Iterator[tuple[Division, Panel]]:
    pedals = {one.id for one in organ.keyboards if one.kind is KeyboardKind.PEDAL}
    manuals = [one for one in organ.divisions if one.keyboard not in pedals]
    for division in organ.divisions:
        right = division in manuals and manuals.index(division) % 2 == 0
        yield division, Panel.RIGHT if right else Panel.LEFT


def piston_words(organ: Organ, piston: Piston) -> str:
    """Say what a piston moves, and what presses it."""
    if piston.kind is PistonKind.DIVISIONAL:
        moved = f"the {organ.division(piston.division or '').name}"
    elif piston.kind is PistonKind.REVERSIBLE:
        moved = next(knob.label for knob in knobs(organ) if knob.id == piston.control)
        moved += " in and out"
    else:
        moved = "everything"
    return f"{moved}, by {piston.touch}"
