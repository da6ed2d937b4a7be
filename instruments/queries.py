"""The only door from stored organs to values."""

from collections import defaultdict
from dataclasses import dataclass

from django.db.models import Count
from django.shortcuts import get_object_or_404

from instruments import models
from instruments.compass import parse_compass
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
    """Give a stored organ as a value, in six queries; 404 when there is none."""
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
