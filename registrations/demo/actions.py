"""Storing the demo parish."""

from datetime import date

from django.db import transaction

from instruments.actions import save_organ
from registrations.actions import save_registration
from registrations.demo import parish
from services.actions import add_item, add_person
from services.models import Item, Person, Piece, Service


@transaction.atomic
def load_demo(today: date) -> None:
    """Store the demo's organs, people, pieces and six weeks of registered services."""
    instruments = {name: save_organ(organ) for name, organ in parish.organs().items()}
    people = {name: Person(name=name, role=role) for name, role in parish.people()}
    for person in people.values():
        add_person(person)
    pieces = {title: _store_piece(title) for title in parish.library()}
    for planned in parish.services_from(today):
        service = Service.objects.create(
            day=planned.day, starts=planned.starts, title=planned.title, church=planned.church
        )
        for one in planned.items:
            item = Item(
                label=one.label,
                piece=pieces[one.piece.title],
                instrument=instruments[one.organ],
                player=people[one.player],
            )
            save_registration(add_item(service, item), one.changes)


def _store_piece(title: str) -> Piece:
    piece, source = parish.library()[title]
    return Piece.objects.create(
        kind=piece.kind,
        title=piece.title,
        composer=piece.composer,
        tune=piece.tune,
        metre=piece.metre,
        key=piece.key,
        verses=piece.verses,
        source=source,
    )
