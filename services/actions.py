"""Writes to services that touch more than one row, each in one transaction."""

from django.contrib.auth import get_user_model
from django.contrib.auth.models import User
from django.contrib.auth.tokens import default_token_generator
from django.db import transaction
from django.db.models import Max
from django.urls import reverse
from django.utils.encoding import force_bytes
from django.utils.http import urlsafe_base64_encode
from django.utils.text import slugify

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


@transaction.atomic
def add_person(person: models.Person) -> User:
    """Store a person and give their sign-in, which has no password until they choose one."""
    users = get_user_model().objects
    base = slugify(person.name).replace("-", ".")[:100] or "person"
    name, number = base, 1
    while users.filter(username=name).exists():
        number += 1
        name = f"{base}{number}"
    person.user = users.create_user(username=name)
    person.save()
    return person.user


def sign_in_path(user: User) -> str:
    """Give the address that signs this user in once, within a day; using it makes it void."""
    uid = urlsafe_base64_encode(force_bytes(user.pk))
    return reverse("welcome", args=[uid, default_token_generator.make_token(user)])
