"""Console: a service as the steps a player takes through it, change by change."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from registrations.cards.content import Block, Sheet, item_sheet
from registrations.registration import Registration
from services.order import Item, Service


@dataclass(frozen=True, slots=True)
class Step:
    """What stands on the desk at one moment: an item's card, and one change (block) of it.

    An item without a registration is a step of its own, with no block.
    """

    sheet: Sheet
    block: Block | None = None

    @property
    def begins(self) -> bool:
        """Whether the item begins here."""
        return self.block is None or self.block.number == 1

    @property
    def name(self) -> str:
        """Name this step for the one before it: the piece at its beginning, else the cue."""
        return self.sheet.title if self.block is None or self.begins else self.block.cue


def steps(service: Service, registrations: Mapping[int, Registration]) -> tuple[Step, ...]:
    """Lay a service out as steps, in order; ``registrations`` by item id, where there are any."""
    return tuple(
        step
        for item in service.items
        for step in _item_steps(service, item, registrations.get(item.id))
    )


def _item_steps(service: Service, item: Item, registration: Registration | None) -> Iterator[Step]:
    sheet = item_sheet(service, item, registration)
    if not sheet.blocks:
        yield Step(sheet)
    for block in sheet.blocks:
        yield Step(sheet, block)
