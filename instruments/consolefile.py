"""The console as it stands in an organ file, and back."""

from typing import Any

from instruments.consoles import Console, Panel, Piston, PistonKind, Place, Touch


def console_to_dict(console: Console) -> dict[str, Any]:
    """Give a console as plain JSON values; what is not known is left out."""
    facts: dict[str, Any] = {
        "keyboards": list(console.keyboards),
        "levels": console.levels,
        "sequencer": console.sequencer,
        "pistons": [_piston_to_dict(one) for one in console.pistons],
        "places": [
            {"control": one.control, "panel": one.panel.value, "column": one.column, "row": one.row}
            for one in console.places_in_order()
        ],
    }
    known = {name: value for name, value in facts.items() if value}
    if console.knobs_move is not None:
        known["knobs_move"] = console.knobs_move
    return known


def _piston_to_dict(piston: Piston) -> dict[str, Any]:
    moved = {"division": piston.division, "control": piston.control}
    return {
        "id": piston.id,
        "name": piston.name,
        "kind": piston.kind.value,
        **{name: value for name, value in moved.items() if value is not None},
        "touch": piston.touch.value,
    }


def console_from_dict(data: dict[str, Any]) -> Console:
    """Read a console of the schema's shape; the inverse of :func:`console_to_dict`."""
    return Console(
        keyboards=tuple(data.get("keyboards", [])),
        places=frozenset(
            Place(one["control"], Panel(one["panel"]), one["column"], one["row"])
            for one in data.get("places", [])
        ),
        pistons=tuple(_piston(one) for one in data.get("pistons", [])),
        knobs_move=data.get("knobs_move"),
        levels=data.get("levels", 0),
        sequencer=data.get("sequencer", False),
    )


def _piston(data: dict[str, Any]) -> Piston:
    return Piston(
        id=data["id"],
        name=data["name"],
        kind=PistonKind(data["kind"]),
        division=data.get("division"),
        control=data.get("control"),
        touch=Touch(data.get("touch", "thumb")),
    )
