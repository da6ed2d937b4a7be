"""The organ file: an Organ as the project's own JSON, and back.

``organ.schema.json`` beside this module describes the shape; what a schema cannot say (an id used
twice, a coupler to nowhere) is checked here. Every error names the place in the file.
"""

import json
from collections import Counter
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from instruments.compass import CompassError, compass_name, key_name, parse_compass, parse_key
from instruments.mixtures import Zone
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
from instruments.tone import Construction, Family

FORMAT = "loftbook-organ"
VERSION = 1
_SCHEMA = Path(__file__).with_name("organ.schema.json")


class OrganFileError(ValueError):
    """A file that is not an organ; the message says where in the file, what, and what to do."""


def parse_organ(text: str) -> Organ:
    """Read an organ file.

    Raises:
        OrganFileError: not JSON, not the schema's shape, or references that lead nowhere.
    """
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        where = (
            f"line {error.lineno}: {error.msg}"
            if isinstance(error, json.JSONDecodeError)
            else "too deep"
        )
        raise OrganFileError(f"This is not a JSON file ({where}).") from error
    return organ_from_dict(data)


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
        "keyboards": [
            {
                "id": one.id,
                "name": one.name,
                "kind": one.kind.value,
                "compass": compass_name(one.compass),
            }
            for one in organ.keyboards
        ],
        "divisions": [_division_to_dict(division) for division in organ.divisions],
        "couplers": [
            {
                "id": one.id,
                "name": one.name,
                "from": one.source,
                "to": one.target,
                "octave": one.octave,
                "unison_off": one.unison_off,
            }
            for one in organ.couplers
        ],
        "accessories": list(organ.accessories),
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


def composition_to_list(composition: Iterable[Zone]) -> list[dict[str, Any]]:
    """Give a composition as JSON values, ``[{"from": "C", "lengths": ["2", "1 1/3"]}]``."""
    return [
        {"from": key_name(zone.start), "lengths": [length_label(length) for length in zone.lengths]}
        for zone in composition
    ]


def composition_from_list(data: list[dict[str, Any]]) -> tuple[Zone, ...]:
    """Read a composition; the inverse of :func:`composition_to_list`.

    Raises:
        LengthError, CompassError: a length or a key that is none.
    """
    zones = [
        Zone(parse_key(zone["from"]), tuple(parse_length(length) for length in zone["lengths"]))
        for zone in data
    ]
    return tuple(sorted(zones, key=lambda zone: zone.start))


def organ_from_dict(data: object) -> Organ:
    """Build an Organ from an organ file's content.

    Raises:
        OrganFileError: as :func:`parse_organ`.
    """
    problem = next(
        iter(sorted(_validator().iter_errors(data), key=lambda one: list(map(str, one.path)))), None
    )
    if problem is not None:
        raise OrganFileError(f"{_place(problem.absolute_path)}: {problem.message[:300]}")
    assert isinstance(data, dict)
    try:
        organ = _organ(data)
    except (LengthError, CompassError) as error:
        raise OrganFileError(str(error)) from error
    _check_references(organ)
    return organ


@cache
def _validator() -> Draft202012Validator:
    return Draft202012Validator(json.loads(_SCHEMA.read_text(encoding="utf-8")))


def _place(path: Iterable[str | int]) -> str:
    place = "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in path)
    return place.lstrip(".") or "The file"


def _organ(data: dict[str, Any]) -> Organ:
    keyboards = tuple(
        Keyboard(one["id"], one["name"], KeyboardKind(one["kind"]), parse_compass(one["compass"]))
        for one in data["keyboards"]
    )
    divisions = tuple(_division(one) for one in data["divisions"])
    return Organ(
        name=data["name"],
        keyboards=keyboards,
        divisions=divisions,
        couplers=tuple(
            Coupler(
                one["id"],
                one["name"],
                _source(one["from"], divisions),
                _target(one["to"], keyboards, divisions),
                one.get("octave", 8),
                one.get("unison_off", False),
            )
            for one in data.get("couplers", [])
        ),
        accessories=tuple(data.get("accessories", [])),
        place=data.get("place", ""),
        pitch_hz=float(data.get("pitch_hz", 440)),
        temperament=data.get("temperament", "equal"),
        coupling=Coupling(data.get("coupling", "direct")),
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


def _check_references(organ: Organ) -> None:
    keyboards = [one.id for one in organ.keyboards]
    divisions = [one.id for one in organ.divisions]
    stops = [stop.id for _, stop in organ.stops()]
    controls = (
        stops + [one.id for one in organ.couplers] + [one.id for _, one in organ.tremulants()]
    )
    for ids, kind in ((keyboards, "keyboard"), (divisions, "division"), (controls, "control")):
        twice = [one for one, count in Counter(ids).items() if count > 1]
        if twice:
            raise OrganFileError(f"The {kind} id “{twice[0]}” is used twice. Give each its own.")
    for division in organ.divisions:
        if division.keyboard is not None:
            _known(division.keyboard, keyboards, f"division {division.id}: keyboard")
    for coupler in organ.couplers:
        _known(coupler.source, divisions, f"coupler {coupler.id}: from")
        _known(coupler.target, keyboards, f"coupler {coupler.id}: to")
    for _, stop in organ.stops():
        if stop.borrowed_from is not None:
            _known(stop.borrowed_from, stops, f"stop {stop.id}: borrowed_from")
    _refuse_circles({stop.id: stop.borrowed_from for _, stop in organ.stops()})


def _known(wanted: str, known: list[str], where: str) -> None:
    if wanted not in known:
        raise OrganFileError(f"{where} names “{wanted}”, which this file does not have.")


def _refuse_circles(lenders: dict[str, str | None]) -> None:
    for stop in lenders:
        seen, lender = {stop}, lenders[stop]
        while lender is not None:
            if lender in seen:
                raise OrganFileError(f"stop {stop}: borrowed_from leads round in a circle.")
            seen.add(lender)
            lender = lenders[lender]
