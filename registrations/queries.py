"""The door from stored registrations to values."""

from collections.abc import Iterable
from dataclasses import dataclass

from django.db.models import Prefetch, Q
from django.shortcuts import get_object_or_404

from instruments.organ import Organ
from instruments.queries import load_organ
from registrations import models
from registrations.combination import Combination, Hands, Music, Player, Texture
from registrations.registration import Change, Registration
from services.models import Item, Service


def change_value(row: models.Change, *, key: str = "", kind: str = "") -> Change:
    """Give a stored change as a value; ``key`` and ``kind`` are those of its piece."""
    hands = Hands(row.right or None, row.left or None, row.feet or None)
    drawn = frozenset(one.control for one in row.drawn.all())
    music = Music(key, Texture(row.texture), kind, Player(row.solo))
    accepted = frozenset(one.fingerprint for one in row.acceptances.all())
    return Change(row.cue, Combination(drawn, hands), music, row.note, accepted)


def registrations_of(items: Iterable[int]) -> dict[int, Registration]:
    """Give the registrations of these items by item id.

    Four queries, and eight for each organ that is played.
    """
    rows = (
        models.Registration.objects.filter(item__in=list(items))
        .select_related("item__piece")
        .prefetch_related("changes__drawn", "changes__acceptances")
    )
    organs: dict[int, Organ] = {}
    found = {}
    for row in rows:
        if row.instrument_id not in organs:
            organs[row.instrument_id] = load_organ(row.instrument_id)
        found[row.item_id] = registration_value(row, organs[row.instrument_id])
    return found


def registration_value(row: models.Registration, organ: Organ) -> Registration:
    """Give a stored registration, whose rows are at hand, as a value."""
    piece = row.item.piece
    changes = (change_value(one, key=piece.key, kind=piece.kind) for one in row.changes.all())
    return Registration(organ, tuple(changes))


@dataclass(frozen=True, slots=True)
class ChangeAt:
    """A change where it stands: its row for the form; its registration and neighbours, values."""

    row: models.Change
    item: Item
    service: Service
    value: Change
    before: Change | None
    registration: Registration
    acceptances: tuple[models.Acceptance, ...]
    cues: tuple[tuple[int, str], ...]
    number: int


def load_change(pk: int) -> ChangeAt:
    """Give a change with all that its page shows, in thirteen queries; 404 when there is none."""
    rows = models.Change.objects.select_related(
        "registration__item__piece", "registration__item__service", "registration__item__player"
    )
    row = get_object_or_404(rows, pk=pk)
    accepted = Prefetch("acceptances", models.Acceptance.objects.select_related("accepted_by"))
    siblings = list(row.registration.changes.prefetch_related("drawn", accepted))
    item = row.registration.item
    values = tuple(change_value(one, key=item.piece.key, kind=item.piece.kind) for one in siblings)
    at = [one.pk for one in siblings].index(pk)
    return ChangeAt(
        row=row,
        item=item,
        service=item.service,
        value=values[at],
        before=values[at - 1] if at else None,
        registration=Registration(load_organ(row.registration.instrument_id), values),
        acceptances=tuple(siblings[at].acceptances.all()),
        cues=tuple((one.pk, one.cue) for one in siblings),
        number=at + 1,
    )


@dataclass(frozen=True, slots=True)
class Use:
    """One change that uses a part of an organ, and where it is."""

    change: int
    cue: str
    piece: str
    service: str


def uses_of(instrument: int, kind: str, part: str) -> tuple[Use, ...]:
    """Give the changes that draw a control, or play a keyboard, of an organ; in one query."""
    played = Q(right=part) | Q(left=part) | Q(feet=part)
    using = played if kind == "keyboards" else Q(drawn__control=part)
    rows = (
        models.Change.objects.filter(using, registration__instrument=instrument)
        .select_related("registration__item__piece", "registration__item__service")
        .order_by("-registration__item__service__day", "registration__item__position", "position")
    )
    return tuple(
        Use(row.pk, row.cue, row.registration.item.piece.title, str(row.registration.item.service))
        for row in rows
    )
