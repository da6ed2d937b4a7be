"""Content: what stands on a console card, as frozen values; where it stands is layout's matter.

Divisions come in the order a player meets them at this console: those of the manuals from the
top down where it says so, else in the organ's own order; floating ones; the pedals' last; then the
couplers. A tremulant stands with its division. There is no "printed at": the same content gives the
same bytes and sheet code.
"""

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from enum import StrEnum
from fractions import Fraction

from instruments.figures import coupler_figure, stop_figure, stop_name
from instruments.organ import Coupler, Division, KeyboardKind, Organ, Stop
from registrations.cards.fonts import clean
from registrations.cards.words import day_words
from registrations.combination import Combination, Hands
from registrations.registration import Change, Registration, moves
from services.order import Item, Service
from services.tonality import key_words

#: Crockford's base 32: no I, L, O or U, which are read as other signs.
CODE_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
COUPLERS = "Couplers"
GONE = "No longer on this organ"


class SheetKind(StrEnum):
    """What a sheet is for."""

    ORDER = "order of service"
    ITEM = "console card"
    GUIDE = "stop guide"


@dataclass(frozen=True, slots=True)
class Control:
    """A stop, coupler or tremulant: its pitch or ranks as a figure (``2⅔′``, ``III``), its name."""

    figure: str
    name: str


@dataclass(frozen=True, slots=True)
class Group:
    """What is drawn, added or put in of one division, or of the couplers."""

    name: str
    controls: tuple[Control, ...]


@dataclass(frozen=True, slots=True)
class Block:
    """One change: its cue, who plays where, what is drawn, what moves since the change before."""

    number: int
    cue: str
    hands: tuple[tuple[str, str], ...]
    drawn: tuple[Group, ...]
    add: tuple[Group, ...]
    put_in: tuple[Group, ...]
    note: str


@dataclass(frozen=True, slots=True)
class Line:
    """One item in the order of service."""

    number: int
    label: str
    title: str
    credit: str
    player: str
    instrument: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One stop of the stop guide; ``facts`` are headed sentences, ``lengths`` what is heard."""

    figure: str
    name: str
    use: str
    told: str
    lengths: tuple[Fraction, ...]
    facts: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One card, the order of a service, or a division of the stop guide."""

    kind: SheetKind
    day: str
    service: str
    church: str
    title: str
    number: int = 0
    label: str = ""
    credit: str = ""
    key: str = ""
    verses: int = 0
    player: str = ""
    instrument: str = ""
    note: str = ""
    blocks: tuple[Block, ...] = ()
    lines: tuple[Line, ...] = ()
    entries: tuple[Entry, ...] = ()


def service_sheets(
    service: Service, registrations: Mapping[int, Registration]
) -> tuple[Sheet, ...]:
    """Give the order of a service and a card for each item; registrations are by item id."""
    cards = (item_sheet(service, item, registrations.get(item.id)) for item in service.items)
    return (order_sheet(service, registrations), *cards)


def order_sheet(service: Service, registrations: Mapping[int, Registration]) -> Sheet:
    """Give the order of a service: its items, who plays each, and on which organ."""
    lines = (
        Line(
            number,
            clean(item.label),
            clean(item.piece.title),
            clean(item.piece.credit),
            clean(item.player),
            _instrument(registrations.get(item.id)),
        )
        for number, item in enumerate(service.items, 1)
    )
    return Sheet(
        SheetKind.ORDER,
        day_words(service.day, service.starts),
        clean(service.title),
        clean(service.church),
        title=clean(service.title),
        lines=tuple(lines),
    )


def item_sheet(service: Service, item: Item, registration: Registration | None) -> Sheet:
    """Give the console card of one item; without a registration it has no blocks."""
    return Sheet(
        SheetKind.ITEM,
        day_words(service.day, service.starts),
        clean(service.title),
        clean(service.church),
        title=clean(item.piece.title),
        number=service.items.index(item) + 1 if item in service.items else 0,
        label=clean(item.label),
        credit=clean(item.piece.credit),
        key=key_words(clean(item.piece.key)),
        verses=item.piece.verses,
        player=clean(item.player),
        instrument=_instrument(registration),
        note=clean(item.note),
        blocks=tuple(_blocks(registration)) if registration else (),
    )


def sheet_code(sheet: Sheet) -> str:
    """Give the six letters and digits that tell one content from another."""
    digest = hashlib.sha256(
        json.dumps(asdict(sheet), sort_keys=True, default=str).encode()
    ).digest()
    number = int.from_bytes(digest[:8], "big")
    return "".join(CODE_ALPHABET[number >> 5 * place & 31] for place in range(6))


def _instrument(registration: Registration | None) -> str:
    return clean(registration.organ.name) if registration else ""


def _blocks(registration: Registration) -> Iterator[Block]:
    organ, before = registration.organ, Combination()
    for number, change in enumerate(registration.changes, 1):
        yield _block(organ, number, change, before)
        before = change.combination


def _block(organ: Organ, number: int, change: Change, before: Combination) -> Block:
    moved = moves(before, change.combination)
    first = number == 1
    return Block(
        number,
        clean(change.cue),
        tuple(_hands(organ, change.combination.hands)),
        _groups(organ, change.combination.drawn),
        () if first else _groups(organ, moved.draw),
        () if first else _groups(organ, moved.put_in),
        clean(change.note),
    )


def _hands(organ: Organ, hands: Hands) -> Iterator[tuple[str, str]]:
    names = {keyboard.id: clean(keyboard.name) for keyboard in organ.keyboards}
    one_keyboard = hands.right == hands.left
    players = (
        ("Both hands" if one_keyboard else "Right hand", hands.right),
        ("Left hand", None if one_keyboard else hands.left),
        ("Feet", hands.feet),
    )
    for player, keyboard in players:
        if keyboard:
            yield player, names.get(keyboard) or f"{clean(keyboard)} (no longer on this organ)"


def _groups(organ: Organ, drawn: frozenset[str]) -> tuple[Group, ...]:
    couplers = tuple(_coupler(one) for one in organ.couplers if one.id in drawn)
    gone = tuple(Control("", clean(one)) for one in sorted(drawn - organ.control_ids()))
    groups = [
        *(Group(clean(one.name), _of_division(one, drawn)) for one in divisions_in_order(organ)),
        Group(COUPLERS, couplers),
        Group(GONE, gone),
    ]
    return tuple(group for group in groups if group.controls)


def divisions_in_order(organ: Organ) -> tuple[Division, ...]:
    """Give the divisions as a card has them: manuals from the top, floating divisions, pedals."""
    hands = [one for one in organ.keyboards_from_top() if one.kind is KeyboardKind.MANUAL]
    manuals = {one.id: at for at, one in enumerate(hands)}
    floating, pedals = len(manuals), len(manuals) + 1

    def place(division: Division) -> int:
        if division.keyboard is None:
            return floating
        return manuals.get(division.keyboard, pedals)

    return tuple(sorted(organ.divisions, key=place))


def _of_division(division: Division, drawn: frozenset[str]) -> tuple[Control, ...]:
    stops = tuple(stop_control(stop) for stop in division.stops if stop.id in drawn)
    shaking = (Control("", clean(one.name)) for one in division.tremulants if one.id in drawn)
    return (*stops, *shaking)


def stop_control(stop: Stop) -> Control:
    """Write a stop for a card: length and ranks leave the name for the figure."""
    return Control(stop_figure(stop), clean(stop_name(stop)))


def _coupler(coupler: Coupler) -> Control:
    return Control(coupler_figure(coupler), clean(coupler.name))
