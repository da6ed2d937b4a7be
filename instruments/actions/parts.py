"""Changing a stored organ part by part; each change counts a revision."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any

from django.db import transaction
from django.db.models import Max, ProtectedError
from django.utils.text import slugify

from instruments import models
from instruments.actions.saving import place_fields
from instruments.consoles import Place


class StillUsedError(Exception):
    """An organ that something stands on; the message says what."""


def add_control(division: models.Division, row: models.Stop | models.Tremulant) -> None:
    """Store a new stop or tremulant at the end of its division, with an id of its own."""
    with transaction.atomic():
        row.instrument, row.division = division.instrument, division
        label = f"{row.name} {getattr(row, 'length', '')}"
        row.slug = _free(
            _controls(division.instrument), f"{division.slug}/{slugify(label.replace('/', '-'))}"
        )
        row.position = _after_last(type(row).objects.filter(division=division))
        row.save()
        division.instrument.revise()


def add_coupler(instrument: models.Instrument, row: models.Coupler) -> None:
    """Store a new coupler after the others, with an id of its own."""
    with transaction.atomic():
        row.slug = _free(_controls(instrument), slugify(row.name))
        _append(instrument, row)


def add_part(instrument: models.Instrument, row: models.Keyboard | models.Division) -> None:
    """Store a new keyboard or division after the others, with an id of its own."""
    with transaction.atomic():
        taken = type(row).objects.filter(instrument=instrument)
        row.slug = _free(taken.values_list("slug", flat=True), slugify(row.name))
        if isinstance(row, models.Keyboard):
            lowest = instrument.keyboards.aggregate(last=Max("from_top"))["last"]
            row.from_top = None if lowest is None else lowest + 1
        _append(instrument, row)


def add_pistons(instrument: models.Instrument, row: models.Piston, count: int) -> None:
    """Store a new piston after the others; several get numbers behind their name."""
    name = row.name
    with transaction.atomic():
        for number in range(1, count + 1):
            row.pk, row.name = None, name if count == 1 else f"{name} {number}"
            row.slug = _free(instrument.pistons.values_list("slug", flat=True), slugify(row.name))
            row.instrument, row.position = instrument, _after_last(instrument.pistons.all())
            row.save(force_insert=True)
        instrument.revise()


def _append(
    instrument: models.Instrument, row: models.Keyboard | models.Division | models.Coupler
) -> None:
    row.instrument = instrument
    row.position = _after_last(type(row).objects.filter(instrument=instrument))
    row.save()
    instrument.revise()


def change_row(row: models.Row) -> None:
    """Store an edited part and count the revision."""
    with transaction.atomic():
        row.save()
        row.instrument.revise()


def change_stop(row: models.Stop, home: models.Division) -> None:
    """Store an edited stop, of ``home`` till now; in another division it goes to the end."""
    if row.division != home:
        row.position = _after_last(row.division.stops.exclude(pk=row.pk))
    change_row(row)


def change_facts(row: models.Instrument, changed: Sequence[str]) -> None:
    """Store the edited facts of an instrument and count the revision."""
    with transaction.atomic():
        row.save(update_fields=list(changed))
        row.revise()


def remove_row(row: models.Row) -> None:
    """Remove a part.

    With a control go its place and the reversibles that moved it; stops that borrowed its pipes
    keep them as their own.
    """
    with transaction.atomic():
        if isinstance(row, models.Control):
            row.instrument.places.filter(control=row.slug).delete()
            row.instrument.pistons.filter(control=row.slug).delete()
        if isinstance(row, models.Stop):
            row.instrument.stops.filter(borrowed_from=row.slug).update(borrowed_from="")
        row.delete()
        row.instrument.revise()


def remove_organ(row: models.Instrument) -> None:
    """Remove an organ and all its parts.

    Raises:
        StillUsedError: services or registrations refer to it.
    """
    try:
        row.delete()
    except ProtectedError as error:
        kinds = Counter(str(one._meta.verbose_name) for one in error.protected_objects)
        used = " and ".join(f"{count} {kind}{'s' * (count > 1)}" for kind, count in kinds.items())
        raise StillUsedError(f"{row} is used by {used}. Change or remove those first.") from error


def move_row(row: models.Row, step: int) -> None:
    """Move a part ``step`` places down (+) or up (-) among its own kind."""
    with transaction.atomic():
        rows = list(siblings(row))
        rows.insert(max(0, min(len(rows) - 1, rows.index(row) + step)), rows.pop(rows.index(row)))
        _number(rows)
        row.instrument.revise()


def set_order(first: models.Row, pks: Sequence[int]) -> bool:
    """Order ``first`` and its own kind as their numbers stand; False where they are not all."""
    with transaction.atomic():
        rows = {one.pk: one for one in siblings(first)}
        if sorted(rows) != sorted(pks):
            return False
        _number([rows[pk] for pk in pks])
        first.instrument.revise()
    return True


def siblings(row: models.Row) -> Iterable[models.Row]:
    """Give the rows that are put in order together, in their order, locked until it is stored."""
    rows: Any
    if isinstance(row, models.Stop | models.Tremulant):
        rows = type(row).objects.filter(division=row.division_id)
    else:
        rows = type(row).objects.filter(instrument=row.instrument_id)
    if isinstance(row, models.Keyboard):
        rows = rows.from_the_top()
    found: Iterable[models.Row] = rows.select_for_update()
    return found


def _number(rows: list[models.Row]) -> None:
    field = "from_top" if isinstance(rows[0], models.Keyboard) else "position"
    for place, one in enumerate(rows, start=1):
        setattr(one, field, place)
    table: Any = type(rows[0])
    table.objects.bulk_update(rows, [field])


def set_places(instrument: models.Instrument, places: Iterable[Place]) -> None:
    """Store where every control stands, in place of what was stored before."""
    with transaction.atomic():
        instrument.places.all().delete()
        models.Place.objects.bulk_create(
            models.Place(instrument=instrument, **place_fields(one)) for one in places
        )
        instrument.revise()


def _free(taken: Iterable[str], wanted: str) -> str:
    """Give an id that is not taken: the wanted one, or with a number behind."""
    used = set(taken)
    base, number, slug = wanted[:110] or "part", 1, wanted[:110] or "part"
    while slug in used:
        number += 1
        slug = f"{base}-{number}"
    return slug


def _controls(instrument: models.Instrument) -> Iterable[str]:
    for rows in (instrument.stops, instrument.tremulants, instrument.couplers):
        yield from rows.values_list("slug", flat=True)


def _after_last(rows: Any) -> int:
    last: int | None = rows.aggregate(last=Max("position"))["last"]
    return 0 if last is None else last + 1
