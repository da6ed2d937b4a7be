"""Board: everything that can be drawn on an organ, in the order a player looks for it."""

from dataclasses import dataclass
from enum import StrEnum

from instruments.figures import coupler_figure, stop_figure, stop_name
from instruments.organ import Coupler, Organ, Stop
from registrations.combination import Combination


class Kind(StrEnum):
    """What a control is."""

    STOP = "stop"
    COUPLER = "coupler"
    TREMULANT = "tremulant"


@dataclass(frozen=True, slots=True)
class Control:
    """One control: its id, the figure before its name (a pitch or a count of ranks), its name."""

    id: str
    kind: Kind
    figure: str
    name: str
    drawn: bool = False

    @property
    def label(self) -> str:
        """Name it in a sentence: ``Twelfth 2⅔′``."""
        return f"{self.name} {self.figure}" if self.kind is Kind.STOP and self.figure else self.name


@dataclass(frozen=True, slots=True)
class Group:
    """The controls of a division, with the couplers of its keyboard and its tremulants."""

    id: str
    name: str
    note: str
    controls: tuple[Control, ...]

    def drawn(self) -> tuple[Control, ...]:
        """Give what is drawn here, in order."""
        return tuple(control for control in self.controls if control.drawn)


def board(organ: Organ, combination: Combination) -> tuple[Group, ...]:
    """Lay out the organ by division, and say of each control whether it is drawn.

    A coupler stands with the division whose keyboard it serves, as on most consoles.
    """
    served = _couplers_by_division(organ)
    return tuple(
        Group(
            division.id,
            division.name,
            "in a box" if division.enclosed else "",
            tuple(
                _drawn_or_not(control, combination)
                for control in (
                    *(_stop(stop) for stop in division.stops),
                    *(_coupler(coupler) for coupler in served.get(division.id, ())),
                    *(Control(one.id, Kind.TREMULANT, "", one.name) for one in division.tremulants),
                )
            ),
        )
        for division in organ.divisions
    )


def _couplers_by_division(organ: Organ) -> dict[str, list[Coupler]]:
    served: dict[str, list[Coupler]] = {}
    for coupler in organ.couplers:
        homes = [one.id for one in organ.divisions if one.keyboard == coupler.target]
        served.setdefault(homes[0] if homes else organ.divisions[0].id, []).append(coupler)
    return served


def _drawn_or_not(control: Control, combination: Combination) -> Control:
    drawn = control.id in combination.drawn
    return Control(control.id, control.kind, control.figure, control.name, drawn)


def _stop(stop: Stop) -> Control:
    return Control(stop.id, Kind.STOP, stop_figure(stop), stop_name(stop))


def _coupler(coupler: Coupler) -> Control:
    return Control(coupler.id, Kind.COUPLER, coupler_figure(coupler), coupler.name)


def labels(organ: Organ) -> dict[str, str]:
    """Give the name of every control in a sentence, by id, with its division where names recur."""
    groups = board(organ, Combination())
    bare = [control.label for group in groups for control in group.controls]
    return {
        control.id: (
            f"{control.label} ({group.name})"
            if bare.count(control.label) > 1 or control.kind is Kind.STOP
            else control.label
        )
        for group in groups
        for control in group.controls
    }
