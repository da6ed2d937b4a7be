"""The only door from stored organs to values."""

from collections import defaultdict
from dataclasses import dataclass
from fractions import Fraction

from django.db.models import Count
from django.http import Http404
from django.shortcuts import get_object_or_404

from instruments import models
from instruments.compass import parse_compass
from instruments.consoles import Console, Panel, Piston, PistonKind, Place, Touch
from instruments.mixtures import composition_from_list
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
from instruments.pipework import pitches_of
from instruments.pitch import parse_length
from instruments.tone import Construction, Family


@dataclass(frozen=True, slots=True)
class OrganLine:
    """One organ of the list: what is said of it before it is opened."""

    id: int
    name: str
    place: str
    stops: int
    keyboards: int


def organ_lines() -> tuple[OrganLine, ...]:
    """Give every organ with its counts, in one query."""
    rows = models.Instrument.objects.annotate(
        stop_count=Count("stops", distinct=True), keyboard_count=Count("keyboards", distinct=True)
    )
    return tuple(
        OrganLine(row.pk, row.name, row.place, row.stop_count, row.keyboard_count) for row in rows
    )


def load_organ(pk: int) -> Organ:
    """Give a stored organ as a value, in eight queries; 404 when there is none."""
    row = get_object_or_404(models.Instrument, pk=pk)
    stops: dict[int, list[Stop]] = defaultdict(list)
    tremulants: dict[int, list[Tremulant]] = defaultdict(list)
    for stop in row.stops.all():
        stops[stop.division_id].append(_stop(stop))
    for tremulant in row.tremulants.all():
        tremulants[tremulant.division_id].append(Tremulant(tremulant.slug, tremulant.name))
    keyboards = list(row.keyboards.all())
    divisions = list(row.divisions.all())
    keyboard_slugs = {one.pk: one.slug for one in keyboards}
    division_slugs = {one.pk: one.slug for one in divisions}
    return Organ(
        name=row.name,
        keyboards=tuple(
            Keyboard(one.slug, one.name, KeyboardKind(one.kind), parse_compass(one.compass))
            for one in keyboards
        ),
        divisions=tuple(
            Division(
                id=one.slug,
                name=one.name,
                keyboard=keyboard_slugs.get(one.keyboard_id or 0),
                enclosed=one.enclosed,
                stops=tuple(stops[one.pk]),
                tremulants=tuple(tremulants[one.pk]),
            )
            for one in divisions
        ),
        couplers=tuple(
            Coupler(
                one.slug,
                one.name,
                division_slugs[one.source_id],
                keyboard_slugs[one.target_id],
                one.octave,
                one.unison_off,
            )
            for one in row.couplers.all()
        ),
        accessories=tuple(row.accessories),
        place=row.place,
        pitch_hz=row.pitch_hz,
        temperament=row.temperament,
        coupling=Coupling(row.coupling),
        console=_console(row, keyboards, division_slugs),
        notes=row.notes,
    )


def _console(
    row: models.Instrument, keyboards: list[models.Keyboard], divisions: dict[int, str]
) -> Console:
    order = sorted((one.from_top, one.slug) for one in keyboards if one.from_top is not None)
    return Console(
        keyboards=tuple(slug for _, slug in order),
        places=frozenset(
            Place(one.control, Panel(one.panel), one.column, one.row) for one in row.places.all()
        ),
        pistons=tuple(
            Piston(
                id=one.slug,
                name=one.name,
                kind=PistonKind(one.kind),
                division=divisions.get(one.division_id or 0),
                control=one.control or None,
                touch=Touch(one.touch),
            )
            for one in row.pistons.all()
        ),
        knobs_move=row.knobs_move,
        levels=row.levels,
        sequencer=row.sequencer,
    )


def _stop(row: models.Stop) -> Stop:
    return Stop(
        id=row.slug,
        name=row.name,
        length=parse_length(row.length) if row.length else None,
        family=Family(row.family),
        construction=Construction(row.construction),
        ranks=row.ranks,
        compass=parse_compass(row.compass) if row.compass else None,
        composition=composition_from_list(row.composition),
        rank=row.rank or None,
        borrowed_from=row.borrowed_from or None,
        half=Half(row.half) if row.half else None,
    )


@dataclass(frozen=True, slots=True)
class HouseStop:
    """One stop of some organ of the house, and where it is."""

    stop: Stop
    division: str
    organ: str
    instrument: int


def house_stops(
    name: str = "", length: Fraction | None = None, family: str = "", division: str = ""
) -> tuple[HouseStop, ...]:
    """Give the stops of all organs that answer, in one query; ``length`` counts in mixtures too."""
    rows = (
        models.Stop.objects.named(name)
        .of_family(family)
        .on(division)
        .select_related("division", "instrument")
        .order_by("instrument__name", "instrument", "division__position", "division", "position")
    )
    found = (
        HouseStop(_stop(row), row.division.name, row.instrument.name, row.instrument_id)
        for row in rows
    )
    return tuple(one for one in found if length is None or _sounds(one.stop, length))


def _sounds(stop: Stop, length: Fraction) -> bool:
    return any(length in zone.lengths for zone in pitches_of(stop))


PARTS: dict[str, type[models.Row]] = {
    "keyboards": models.Keyboard,
    "divisions": models.Division,
    "stops": models.Stop,
    "tremulants": models.Tremulant,
    "couplers": models.Coupler,
    "pistons": models.Piston,
}


def find_part(kind: str, pk: int) -> models.Row:
    """Give a part of an organ by its kind, as addresses and lists name it; 404 when none is so."""
    if kind not in PARTS:
        raise Http404(f"An organ has no {kind[:40]}.")
    part: models.Row = get_object_or_404(PARTS[kind].objects.select_related("instrument"), pk=pk)
    return part


def hindrance(row: models.Row) -> str:
    """Say what keeps a keyboard or division from being removed; empty where nothing does."""
    if isinstance(row, models.Keyboard):
        held = [("division", row.divisions.count()), ("coupler", row.reached_by.count())]
        if row.instrument.keyboards.count() == 1:
            return "It is the only keyboard of this organ."
    elif isinstance(row, models.Division):
        held = [
            ("stop", row.stops.count()),
            ("tremulant", row.tremulants.count()),
            ("coupler", row.carried_by.count()),
            ("piston", row.pistons.count()),
        ]
    else:
        return ""
    counted = [f"{count} {word}{'s' * (count > 1)}" for word, count in held if count]
    return f"It still has {' and '.join(counted)}. Move or remove those first." if counted else ""
