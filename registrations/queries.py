"""The door from stored registrations to values."""

from collections.abc import Iterable, Mapping

from instruments.organ import Organ
from instruments.queries import load_organ
from registrations import models
from registrations.combination import Combination, Hands, Music, Player, Texture
from registrations.registration import Change, Registration


def change_value(row: models.Change, *, key: str = "", kind: str = "") -> Change:
    """Give a stored change as a value; ``key`` and ``kind`` are those of its piece."""
    hands = Hands(row.right or None, row.left or None, row.feet or None)
    drawn = frozenset(one.control for one in row.drawn.all())
    music = Music(key, Texture(row.texture), kind, Player(row.solo))
    return Change(row.cue, Combination(drawn, hands), music, row.note)


def registrations_of(items: Iterable[int]) -> Mapping[int, Registration]:
    """Give the registrations of these items by item id.

    Three queries, and six for each organ that is played.
    """
    rows = (
        models.Registration.objects.filter(item__in=list(items))
        .select_related("item__piece")
        .prefetch_related("changes__drawn")
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
