"""Writes to a stored organ that touch more than one row, each in one transaction."""

from collections.abc import Iterable, Sequence
from typing import Any

from django.db import transaction
from django.db.models import Max
from django.utils.text import slugify

from instruments import models
from instruments.compass import compass_name
from instruments.mixtures import composition_to_list
from instruments.organ import Organ, Stop
from instruments.pitch import length_label


@transaction.atomic
def save_organ(organ: Organ) -> models.Instrument:
    """Store an organ as a new instrument."""
    row = models.Instrument.objects.create(
        name=organ.name,
        place=organ.place,
        pitch_hz=organ.pitch_hz,
        temperament=organ.temperament,
        coupling=organ.coupling,
        accessories=list(organ.accessories),
    )
    keyboards = {
        one.id: row.keyboards.create(
            slug=one.id,
            name=one.name,
            kind=one.kind,
            compass=compass_name(one.compass),
            position=at,
        )
        for at, one in enumerate(organ.keyboards)
    }
    divisions = {
        one.id: row.divisions.create(
            slug=one.id,
            name=one.name,
            keyboard=keyboards[one.keyboard] if one.keyboard else None,
            enclosed=one.enclosed,
            position=at,
        )
        for at, one in enumerate(organ.divisions)
    }
    models.Stop.objects.bulk_create(
        models.Stop(
            instrument=row, division=divisions[division.id], position=at, **stop_fields(stop)
        )
        for at, (division, stop) in enumerate(organ.stops())
    )
    models.Tremulant.objects.bulk_create(
        models.Tremulant(
            instrument=row, division=divisions[division.id], slug=one.id, name=one.name, position=at
        )
        for at, (division, one) in enumerate(organ.tremulants())
    )
    models.Coupler.objects.bulk_create(
        models.Coupler(
            instrument=row,
            slug=one.id,
            name=one.name,
            source=divisions[one.source],
            target=keyboards[one.target],
            octave=one.octave,
            unison_off=one.unison_off,
            position=at,
        )
        for at, one in enumerate(organ.couplers)
    )
    return row


def stop_fields(stop: Stop) -> dict[str, Any]:
    """Give the stored fields of a stop value."""
    return {
        "slug": stop.id,
        "name": stop.name,
        "length": "" if stop.length is None else length_label(stop.length),
        "ranks": stop.ranks,
        "family": stop.family,
        "construction": stop.construction,
        "compass": "" if stop.compass is None else compass_name(stop.compass),
        "composition": composition_to_list(stop.composition),
        "rank": stop.rank or "",
        "borrowed_from": stop.borrowed_from or "",
        "half": stop.half or "",
    }


def add_control(division: models.Division, row: models.Stop | models.Tremulant) -> None:
    """Store a new stop or tremulant at the end of its division, with an id of its own."""
    with transaction.atomic():
        row.instrument, row.division = division.instrument, division
        label = f"{row.name} {getattr(row, 'length', '')}"
        row.slug = free_slug(
            division.instrument, f"{division.slug}/{slugify(label.replace('/', '-'))}"
        )
        row.position = _after_last(type(row).objects.filter(division=division))
        row.save()
        division.instrument.revise()


def add_coupler(instrument: models.Instrument, row: models.Coupler) -> None:
    """Store a new coupler after the others, with an id of its own."""
    with transaction.atomic():
        row.instrument = instrument
        row.slug = free_slug(instrument, slugify(row.name))
        row.position = _after_last(instrument.couplers.all())
        row.save()
        instrument.revise()


def change_row(row: models.Stop | models.Tremulant | models.Coupler | models.Division) -> None:
    """Store an edited part of an organ and count the revision."""
    with transaction.atomic():
        row.save()
        row.instrument.revise()


def remove_row(row: models.Stop | models.Tremulant | models.Coupler) -> None:
    """Remove a control; stops that borrowed its pipes keep them as their own."""
    with transaction.atomic():
        if isinstance(row, models.Stop):
            row.instrument.stops.filter(borrowed_from=row.slug).update(borrowed_from="")
        row.delete()
        row.instrument.revise()


def move_stop(stop: models.Stop, step: int) -> None:
    """Move a stop ``step`` places down (+) or up (-) within its division."""
    with transaction.atomic():
        rows = list(models.Stop.objects.select_for_update().filter(division=stop.division))
        _reorder(rows, rows.index(stop), step)
        models.Stop.objects.bulk_update(rows, ["position"])
        stop.instrument.revise()


def _reorder(rows: list[models.Stop], at: int, step: int) -> None:
    row = rows.pop(at)
    rows.insert(max(0, min(len(rows), at + step)), row)
    for position, one in enumerate(rows):
        one.position = position


def free_slug(instrument: models.Instrument, wanted: str) -> str:
    """Give an id that no control of the instrument has: the wanted one, or with a number behind."""
    taken = set(_slugs(instrument))
    base, number, slug = wanted[:110] or "control", 1, wanted[:110] or "control"
    while slug in taken:
        number += 1
        slug = f"{base}-{number}"
    return slug


def _slugs(instrument: models.Instrument) -> Iterable[str]:
    for rows in (instrument.stops, instrument.tremulants, instrument.couplers):
        yield from rows.values_list("slug", flat=True)


def _after_last(rows: Any) -> int:
    last: int | None = rows.aggregate(last=Max("position"))["last"]
    return 0 if last is None else last + 1


def change_facts(row: models.Instrument, changed: Sequence[str]) -> None:
    """Store the edited facts of an instrument and count the revision."""
    with transaction.atomic():
        row.save(update_fields=list(changed))
        row.revise()
