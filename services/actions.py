"""Writes to services that touch more than one row, each in one transaction."""

from django.db import transaction
from django.db.models import Max

from services import models


@transaction.atomic
def add_item(service: models.Service, item: models.Item) -> models.Item:
    """Put an item at the end of a service's order."""
    last = service.items.aggregate(last=Max("position"))["last"]
    item.service, item.position = service, 0 if last is None else last + 1
    item.save()
    return item


@transaction.atomic
def move_item(item: models.Item, step: int) -> None:
    """Move an item ``step`` places down (+) or up (-) in its service."""
    rows = list(models.Item.objects.select_for_update().filter(service_id=item.service_id))
    at = rows.index(item)
    rows.insert(max(0, min(len(rows) - 1, at + step)), rows.pop(at))
    for position, row in enumerate(rows):
        row.position = position
    models.Item.objects.bulk_update(rows, ["position"])
