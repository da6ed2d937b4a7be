"""The door from stored services to values."""

from datetime import date

from django.shortcuts import get_object_or_404

from services import models
from services.order import Item, Piece, PieceKind, Service


def load_service(pk: int) -> Service:
    """Give a service with its items as a value, in two queries; 404 when there is none."""
    return service_value(get_object_or_404(_with_items(), pk=pk))


def services_in_week(monday: date) -> tuple[Service, ...]:
    """Give the services of the seven days from ``monday``, in order of time."""
    return tuple(map(service_value, _with_items().in_week(monday)))


def services_on(day: date) -> tuple[Service, ...]:
    """Give the services of a day, in order of time."""
    return tuple(map(service_value, _with_items().filter(day=day)))


def services_with(pk: int) -> tuple[Service, ...]:
    """Give the service of this number, or none."""
    return tuple(map(service_value, _with_items().filter(pk=pk)))


def services_from(day: date, most: int = 60) -> tuple[Service, ...]:
    """Give the services on and after a day, in order of time."""
    return tuple(map(service_value, _with_items().on_or_after(day)[:most]))


def _with_items() -> models.ServiceQuerySet:
    return models.Service.objects.prefetch_related("items__piece", "items__player")


def next_service(day: date) -> models.Service | None:
    """Give the first service on or after a day."""
    return _with_items().on_or_after(day).first()


def service_value(row: models.Service) -> Service:
    """Give a row whose items are at hand as a value."""
    items = tuple(
        Item(
            id=item.pk,
            label=item.label,
            piece=piece_value(item.piece),
            player=item.player.name if item.player else "",
            note=item.note,
        )
        for item in row.items.all()
    )
    return Service(row.pk, row.day, row.starts, row.title, row.church, items)


def piece_value(row: models.Piece) -> Piece:
    """Give a stored piece as a value."""
    return Piece(
        title=row.title,
        kind=PieceKind(row.kind),
        composer=row.composer,
        tune=row.tune,
        metre=row.metre,
        key=row.key,
        verses=row.verses,
    )
