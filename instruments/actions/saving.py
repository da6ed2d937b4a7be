"""Storing an organ value as a new instrument."""

from typing import Any

from django.db import transaction

from instruments import models
from instruments.compass import compass_name
from instruments.consoles import Place
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
        notes=organ.notes,
        knobs_move=organ.console.knobs_move,
        levels=organ.console.levels,
        sequencer=organ.console.sequencer,
    )
    from_top = {name: at for at, name in enumerate(organ.console.keyboards, start=1)}
    keyboards = {
        one.id: row.keyboards.create(
            slug=one.id,
            name=one.name,
            kind=one.kind,
            compass=compass_name(one.compass),
            position=at,
            from_top=from_top.get(one.id),
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
    _save_controls(row, organ, keyboards, divisions)
    _save_console(row, organ, divisions)
    return row


def _save_controls(
    row: models.Instrument,
    organ: Organ,
    keyboards: dict[str, models.Keyboard],
    divisions: dict[str, models.Division],
) -> None:
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


def _save_console(
    row: models.Instrument, organ: Organ, divisions: dict[str, models.Division]
) -> None:
    models.Place.objects.bulk_create(
        models.Place(instrument=row, **place_fields(one)) for one in organ.console.places_in_order()
    )
    models.Piston.objects.bulk_create(
        models.Piston(
            instrument=row,
            slug=one.id,
            name=one.name,
            kind=one.kind,
            division=divisions[one.division] if one.division else None,
            control=one.control or "",
            touch=one.touch,
            position=at,
        )
        for at, one in enumerate(organ.console.pistons)
    )


def place_fields(place: Place) -> dict[str, Any]:
    """Give the stored fields of a place value."""
    return {name: getattr(place, name) for name in ("control", "panel", "column", "row")}


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
