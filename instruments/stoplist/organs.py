"""Organs: what was read becomes one organ."""

from collections.abc import Sequence

from instruments.compass import Compass, compass_name
from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ
from instruments.stoplist.book import Book, Part, slug_of
from instruments.stoplist.couplers import couplers_of
from instruments.stoplist.reading import Assumed

_MANUAL, _FEET = Compass(0, 55), Compass(0, 29)


def organ_of(book: Book, name: str) -> Organ:
    """Make the organ of all that was read; couplers that lead nowhere become unread."""
    couplers = tuple(couplers_of(book))
    _leave_out_empty(book, couplers)
    _assume_compasses(book)
    ordered = sorted(book.parts, key=lambda part: part.is_pedal)
    return Organ(
        name=name or (book.titles[0] if book.titles else "An organ"),
        place=", ".join(book.titles[1:]),
        keyboards=tuple(_keyboard(book, part) for part in ordered if _home(book, part) is part),
        divisions=tuple(_division(part, _home(book, part)) for part in ordered),
        couplers=couplers,
        accessories=tuple(book.accessories),
        pitch_hz=book.pitch or 440.0,
        temperament=book.temperament,
        coupling=book.coupling,
        notes="\n".join(book.notes),
    )


def _leave_out_empty(book: Book, couplers: Sequence[Coupler]) -> None:
    """Leave out manuals that have no stop, and that no coupler or other division needs."""
    needed = {end for one in couplers for end in (one.source, one.target)}
    needed |= {slug_of(part.host) for part in book.parts if part.host}
    book.parts = [
        part
        for part in book.parts
        if part.stops or part.tremulants or part.is_pedal or part.slug in needed
    ]


def _assume_compasses(book: Book) -> None:
    for feet in (False, True):
        silent = [part for part in book.parts if part.is_pedal is feet and part.compass is None]
        if not silent or feet in book.compasses:
            continue
        told = [part.compass for part in book.parts if part.is_pedal is feet and part.compass]
        book.compasses[feet] = told[0] if told else (_FEET if feet else _MANUAL)
        book.assumed.append(
            Assumed(
                0,
                f"The compass of the {'pedals' if feet else 'manuals'} is not written; "
                f"{compass_name(book.compasses[feet])} is taken.",
            )
        )


def _keyboard(book: Book, part: Part) -> Keyboard:
    kind = KeyboardKind.PEDAL if part.is_pedal else KeyboardKind.MANUAL
    compass = part.compass or book.compasses[part.is_pedal]
    return Keyboard(part.slug, part.name, kind, compass)


def _home(book: Book, part: Part) -> Part | None:
    """Give the division whose keyboard plays a division: itself, its host, none where it floats."""
    if part.floating:
        return None
    return next((one for one in book.parts if part.host == one.name and not one.floating), part)


def _division(part: Part, home: Part | None) -> Division:
    return Division(
        part.slug,
        part.name,
        home.slug if home else None,
        part.enclosed,
        tuple(part.stops),
        tuple(part.tremulants),
    )
