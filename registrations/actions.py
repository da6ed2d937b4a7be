"""Writes to registrations that touch more than one row, each in one transaction."""

from django.db import transaction
from django.db.models import F

from instruments.models import Instrument
from registrations import models
from registrations.registration import Change
from services.models import Item


@transaction.atomic
def begin_registration(item: Item) -> models.Change:
    """Give the first change of an item's registration, made on its organ if there is none."""
    registration, _ = models.Registration.objects.get_or_create(
        item=item, defaults={"instrument": Instrument.objects.get(items=item)}
    )
    first = registration.changes.first()
    return first or registration.changes.create(cue="Beginning")


@transaction.atomic
def save_registration(item: Item, changes: tuple[Change, ...]) -> models.Registration:
    """Store changes as the registration of an item that has none yet."""
    registration = models.Registration.objects.create(
        item=item, instrument=Instrument.objects.get(items=item)
    )
    for position, change in enumerate(changes):
        hands = change.combination.hands
        row = registration.changes.create(
            position=position,
            cue=change.cue,
            right=hands.right or "",
            left=hands.left or "",
            feet=hands.feet or "",
            texture=change.music.texture,
            solo=change.music.solo,
            note=change.note,
        )
        _draw_all(row, change.combination.drawn)
    return registration


def _draw_all(change: models.Change, controls: frozenset[str]) -> None:
    models.Drawn.objects.bulk_create(
        models.Drawn(change=change, control=control) for control in sorted(controls)
    )


@transaction.atomic
def move_controls(change: models.Change, draw: frozenset[str], put_in: frozenset[str]) -> None:
    """Draw and put in controls; what is already so stays so."""
    change.drawn.filter(control__in=put_in).delete()
    models.Drawn.objects.bulk_create(
        (models.Drawn(change=change, control=control) for control in sorted(draw)),
        ignore_conflicts=True,
    )


@transaction.atomic
def add_change(after: models.Change, cue: str) -> models.Change:
    """Add a change behind another, beginning with the same things drawn and the same hands."""
    registration = after.registration
    registration.changes.filter(position__gt=after.position).update(position=F("position") + 1)
    new = registration.changes.create(
        position=after.position + 1,
        cue=cue,
        right=after.right,
        left=after.left,
        feet=after.feet,
        texture=after.texture,
        solo=after.solo,
    )
    _draw_all(new, frozenset(after.drawn.values_list("control", flat=True)))
    return new


@transaction.atomic
def remove_change(change: models.Change) -> models.Change | None:
    """Remove a change; give the one to show instead, None when the registration is gone with it."""
    registration = change.registration
    change.delete()
    earlier = registration.changes.filter(position__lte=change.position).last()
    shown = earlier or registration.changes.first()
    if shown is None:
        registration.delete()
    return shown


@transaction.atomic
def move_change(change: models.Change, step: int) -> None:
    """Move a change ``step`` places later (+) or earlier (-) in its registration."""
    rows = list(
        models.Change.objects.select_for_update().filter(registration=change.registration_id)
    )
    at = rows.index(change)
    rows.insert(max(0, min(len(rows) - 1, at + step)), rows.pop(at))
    for position, row in enumerate(rows):
        row.position = position
    models.Change.objects.bulk_update(rows, ["position"])
