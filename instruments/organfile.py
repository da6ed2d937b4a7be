"""The organ file: an Organ as the project's own JSON, and back.

``organ.schema.json`` beside this module describes the shape; what a schema cannot say (an id used
twice, a coupler to nowhere) is looked for in ``references``. Every error names the place.
"""

import json
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator, ValidationError

from instruments.compass import CompassError, compass_name, parse_compass
from instruments.consolefile import console_from_dict, console_to_dict
from instruments.consoles import UNKNOWN
from instruments.mixtures import composition_from_list, composition_to_list
from instruments.organ import (
    Coupler,
    Coupling,
    Division,
    Half,
    Keyboard,
    KeyboardKind,
    Organ,
    Stop,
    Tremulant,
)
from instruments.pitch import LengthError, length_label, parse_length
from instruments.references import loose_ends
from instruments.strictjson import JSONTextError, read_json
from instruments.tone import Construction, Family

FORMAT = "loftbook-organ"
VERSION = 1
_SCHEMA = Path(__file__).with_name("organ.schema.json")


class OrganFileError(ValueError):
    """A file that is not an organ; the message says where in the file and what is wrong."""


def parse_organ(text: str) -> Organ:
    """Read an organ file.

    Raises:
        OrganFileError: not JSON, not the schema's shape, or references that lead nowhere.
    """
    try:
        return organ_from_dict(read_json(text))
    except JSONTextError as error:
        raise OrganFileError(str(error)) from error


def organ_text(organ: Organ) -> str:
    """Write an organ file; reading it gives an equal Organ, and writing that the same bytes."""
    return json.dumps(organ_to_dict(organ), ensure_ascii=False, indent=2) + "\n"


def organ_to_dict(organ: Organ) -> dict[str, Any]:
    """Give the organ file's content as plain JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "name": organ.name,
        "place": organ.place,
        "pitch_hz": organ.pitch_hz,
        "temperament": organ.temperament,
        "coupling": organ.coupling.value,
        "keyboards": [_keyboard_to_dict(keyboard) for keyboard in organ.keyboards],
        "divisions": [_division_to_dict(division) for division in organ.divisions],
        "couplers": [_coupler_to_dict(coupler) for coupler in organ.couplers],
        "accessories": list(organ.accessories),
        **({"console": console_to_dict(organ.console)} if organ.console != UNKNOWN else {}),
        **({"notes": organ.notes} if organ.notes else {}),
    }


def _keyboard_to_dict(keyboard: Keyboard) -> dict[str, Any]:
    return {
        "id": keyboard.id,
        "name": keyboard.name,
        "kind": keyboard.kind.value,
        "compass": compass_name(keyboard.compass),
    }


def _coupler_to_dict(coupler: Coupler) -> dict[str, Any]:
    return {
        "id": coupler.id,
        "name": coupler.name,
        "from": coupler.source,
        "to": coupler.target,
        "octave": coupler.octave,
        "unison_off": coupler.unison_off,
    }


def _division_to_dict(division: Division) -> dict[str, Any]:
    return {
        "id": division.id,
        "name": division.name,
        "keyboard": division.keyboard,
        "enclosed": division.enclosed,
        "stops": [_stop_to_dict(stop) for stop in division.stops],
        "tremulants": [{"id": one.id, "name": one.name} for one in division.tremulants],
    }


def _stop_to_dict(stop: Stop) -> dict[str, Any]:
    return {
        "id": stop.id,
        "name": stop.name,
        "length": None if stop.length is None else length_label(stop.length),
        "ranks": stop.ranks,
        "family": stop.family.value,
        "construction": stop.construction.value,
        "compass": None if stop.compass is None else compass_name(stop.compass),
        "composition": composition_to_list(stop.composition),
        "rank": stop.rank,
        "borrowed_from": stop.borrowed_from,
        "half": None if stop.half is None else stop.half.value,
    }


def organ_from_dict(data: object) -> Organ:
    """Build an Organ from an organ file's content.

    Raises:
        OrganFileError: as :func:`parse_organ`.
    """
    problem = next(
        iter(sorted(_validator().iter_errors(data), key=lambda one: list(map(str, one.path)))), None
    )
    if problem is not None:
        raise OrganFileError(f"{_place(problem.absolute_path)}: {_sentence(problem)}")
    assert isinstance(data, dict)
    organ = _organ(data)
    loose = next(loose_ends(organ), None)
    if loose is not None:
        raise OrganFileError(loose)
    return organ


@cache
def _validator() -> Draft202012Validator:
    return Draft202012Validator(json.loads(_SCHEMA.read_text(encoding="utf-8")))


def _place(path: Iterable[str | int]) -> str:
    place = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in path)
    return place.lstrip(".") or "The file"


def _sentence(problem: ValidationError) -> str:
    if problem.validator == "pattern":
        return f"“{problem.instance[:80]}” does not fit. {problem.schema['description']}"
    return str(problem.message[:300])


def _organ(data: dict[str, Any]) -> Organ:
    keyboards = tuple(map(_keyboard, data["keyboards"]))
    divisions = tuple(map(_division, data["divisions"]))
    return Organ(
        name=data["name"],
        keyboards=keyboards,
        divisions=divisions,
        couplers=tuple(_coupler(one, keyboards, divisions) for one in data.get("couplers", [])),
        accessories=tuple(data.get("accessories", [])),
        place=data.get("place", ""),
        pitch_hz=float(data.get("pitch_hz", 440)),
        temperament=data.get("temperament", "equal"),
        coupling=Coupling(data.get("coupling", "direct")),
        console=console_from_dict(data.get("console", {})),
        notes=data.get("notes", ""),
    )


def _coupler(
    data: dict[str, Any], keyboards: tuple[Keyboard, ...], divisions: tuple[Division, ...]
) -> Coupler:
    return Coupler(
        data["id"],
        data["name"],
        _source(data["from"], divisions),
        _target(data["to"], keyboards, divisions),
        data.get("octave", 8),
        data.get("unison_off", False),
    )


def _source(written: str, divisions: tuple[Division, ...]) -> str:
    homes = [division.id for division in divisions if division.keyboard == written]
    if any(division.id == written for division in divisions) or not homes:
        return written
    return homes[0]


def _target(written: str, keyboards: tuple[Keyboard, ...], divisions: tuple[Division, ...]) -> str:
    if any(keyboard.id == written for keyboard in keyboards):
        return written
    return next((one.keyboard for one in divisions if one.id == written and one.keyboard), written)


def _keyboard(data: dict[str, Any]) -> Keyboard:
    try:
        compass = parse_compass(data["compass"])
    except CompassError as error:
        raise OrganFileError(f"keyboard {data['id']}: {error}") from error
    return Keyboard(data["id"], data["name"], KeyboardKind(data["kind"]), compass)


def _division(data: dict[str, Any]) -> Division:
    return Division(
        id=data["id"],
        name=data["name"],
        keyboard=data["keyboard"],
        enclosed=data.get("enclosed", False),
        stops=tuple(_stop(one) for one in data["stops"]),
        tremulants=tuple(Tremulant(one["id"], one["name"]) for one in data.get("tremulants", [])),
    )


def _stop(data: dict[str, Any]) -> Stop:
    try:
        return _read_stop(data)
    except (LengthError, CompassError) as error:
        raise OrganFileError(f"stop {data['id']}: {error}") from error


def _read_stop(data: dict[str, Any]) -> Stop:
    composition = composition_from_list(data.get("composition", []))
    length, compass, half = data.get("length"), data.get("compass"), data.get("half")
    return Stop(
        id=data["id"],
        name=data["name"],
        length=None if length is None else parse_length(length),
        family=Family(data["family"]),
        construction=Construction(data.get("construction", "open")),
        ranks=data.get("ranks") or max((len(zone.lengths) for zone in composition), default=1),
        compass=None if compass is None else parse_compass(compass),
        composition=composition,
        rank=data.get("rank"),
        borrowed_from=data.get("borrowed_from"),
        half=None if half is None else Half(half),
    )
