"""Parish: the demo's files as frozen values, laid out from a given day."""

import csv
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, time, timedelta
from functools import cache
from pathlib import Path
from typing import Any

from instruments.figures import roman, stop_name
from instruments.organ import Organ, Stop
from instruments.pitch import length_label
from instruments.stoplist import read_stoplist
from registrations.combination import Combination, Hands, Music, Player, Texture
from registrations.registration import Change
from services.order import Piece, PieceKind

HERE = Path(__file__).parent
WEEKS = 6
ORGANS = ("all_hallows", "chamber")
_SUNDAY = 6


@dataclass(frozen=True, slots=True)
class PlannedItem:
    """An item of a planned service: its piece, the organ's name in ``ORGANS``, its changes."""

    label: str
    piece: Piece
    organ: str
    player: str
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True)
class PlannedService:
    """A service of the demo."""

    day: date
    starts: time
    title: str
    church: str
    items: tuple[PlannedItem, ...]


def organ_text(name: str) -> str:
    """Give the stop list of one of the demo's organs as it would be pasted."""
    return (HERE / f"{name}.txt").read_text(encoding="utf-8")


@cache
def organs() -> dict[str, Organ]:
    """Give the demo's organs by name."""
    return {name: read_stoplist(organ_text(name)).organ for name in ORGANS}


@cache
def library() -> dict[str, tuple[Piece, str]]:
    """Give the demo's pieces by title, each with where its facts come from."""
    with (HERE / "pieces.csv").open(encoding="utf-8", newline="") as file:
        return {row["title"]: (_piece(row), row["source"]) for row in csv.DictReader(file)}


def _piece(row: dict[str, str]) -> Piece:
    return Piece(
        title=row["title"],
        kind=PieceKind(row["kind"]),
        composer=row["composer"],
        tune=row["tune"],
        metre=row["metre"],
        key=row["key"],
        verses=int(row["verses"]),
    )


def people() -> tuple[tuple[str, str], ...]:
    """Give the demo's people: name and role."""
    return tuple((one["name"], one["role"]) for one in _plan()["people"])


@cache
def _plan() -> dict[str, Any]:
    return tomllib.loads((HERE / "plan.toml").read_text(encoding="utf-8"))


@cache
def _patterns() -> dict[str, Any]:
    return tomllib.loads((HERE / "patterns.toml").read_text(encoding="utf-8"))


def services_from(today: date) -> tuple[PlannedService, ...]:
    """Give six weeks of services, from the Sunday on or after ``today``, in order of time."""
    first = today + timedelta(days=(_SUNDAY - today.weekday()) % 7)
    planned = [
        _service(told, week, first + timedelta(weeks=week, days=told["day"]))
        for week in range(WEEKS)
        for told in _plan()["service"]
    ]
    return tuple(sorted(planned, key=lambda one: (one.day, one.starts)))


def _service(told: dict[str, Any], week: int, day: date) -> PlannedService:
    return PlannedService(
        day,
        time.fromisoformat(told["time"]),
        told["title"],
        _plan()["church"],
        tuple(_item(slot, week, told["player"]) for slot in told["slot"]),
    )


def _item(slot: dict[str, Any], week: int, player: str) -> PlannedItem:
    pattern = _pattern(slot.get("changed", {}).get(str(week), slot["pattern"]))
    piece, _ = library()[slot["pieces"][week]]
    organ = pattern["organ"]
    return PlannedItem(
        slot["label"], piece, organ, player, tuple(_changes(pattern, organs()[organ], piece))
    )


def _pattern(name: str) -> dict[str, Any]:
    own: dict[str, Any] = _patterns()[name]
    return _pattern(own["like"]) | own if "like" in own else own


def _changes(pattern: dict[str, Any], organ: Organ, piece: Piece) -> Iterator[Change]:
    music = {"key": piece.key, "kind": piece.kind.value}
    if pattern["lays"] == "as written":
        for told in pattern["changes"]:
            yield _change(told, organ, music)
        return
    for verse in range(1, piece.verses + 1):
        told = {"cue": _verse(verse, piece.verses), "hands": pattern["hands"]}
        if verse == 1:
            told["draw"] = pattern["first"]
        elif verse == piece.verses:
            told |= {"draw": pattern["last"], "note": pattern.get("last_note", "")}
        else:
            told["draw"] = pattern["middle"][verse % len(pattern["middle"])]
        yield _change(told, organ, music)


def _verse(number: int, verses: int) -> str:
    if number == 1:
        return "Play-over and verse 1"
    return f"Verse {number} (last)" if number == verses else f"Verse {number}"


def _change(told: dict[str, str], organ: Organ, music: dict[str, str]) -> Change:
    right, left, feet = (name.strip().lower() or None for name in told["hands"].split(","))
    return Change(
        told["cue"],
        Combination(frozenset(_controls(told["draw"], organ)), Hands(right, left, feet)),
        Music(
            texture=Texture(told.get("texture", "chords")),
            solo=Player(told.get("solo", "right")),
            **music,
        ),
        told.get("note", ""),
    )


def _controls(told: str, organ: Organ) -> Iterator[str]:
    """Give the ids of ``Great: Principal 4, Mixture IV; Swell to Great``, KeyError if unknown."""
    couplers = {coupler.name: coupler.id for coupler in organ.couplers}
    for group in told.split("; "):
        division, colon, names = group.partition(": ")
        if not colon:
            yield from (couplers[name] for name in group.split(", "))
            continue
        known = _known(organ, division)
        yield from (known[name] for name in names.split(", "))


def _known(organ: Organ, division_name: str) -> dict[str, str]:
    division = next(one for one in organ.divisions if one.name == division_name)
    stops = {_written(stop): stop.id for stop in division.stops}
    return stops | {one.name: one.id for one in division.tremulants}


def _written(stop: Stop) -> str:
    """Write a stop as the recipes do: ``Twelfth 2 2/3``, ``Mixture IV``, ``Flute 8 (bass)``."""
    name = stop_name(stop).removesuffix(f" ({stop.half})")
    figure = roman(stop.ranks) if stop.length is None else length_label(stop.length)
    return f"{name} {figure}" + (f" ({stop.half})" if stop.half else "")
