"""Organs: what was read becomes one organ."""

from collections.abc import Iterator

from instruments.compass import Compass, compass_name
from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ
from instruments.stoplist.book import Book
from instruments.stoplist.reading import Assumed, Unread
from instruments.stoplist.tables import PEDAL

_MANUAL, _FEET = Compass(0, 55), Compass(0, 29)


def organ_of(book: Book, name: str) -> Organ:
    """Make the organ of all that was read; couplers that lead nowhere become unread."""
    for feet in (False, True):
        if feet not in book.compasses and any(
            (one.name == PEDAL) is feet and one.compass is None for one in book.parts
        ):
            book.compasses[feet] = _FEET if feet else _MANUAL
            book.assumed.append(
                Assumed(
                    0,
                    f"The compass of the {'pedals' if feet else 'manuals'} is not written; {compass_name(book.compasses[feet])} is taken.",
                )
            )
    ordered = sorted(book.parts, key=lambda part: part.name == PEDAL)
    slugs = {part.name: part.name.lower() for part in ordered}
    keyboards = tuple(
        Keyboard(
            slugs[one.name],
            one.name,
            KeyboardKind.PEDAL if one.name == PEDAL else KeyboardKind.MANUAL,
            one.compass or book.compasses[one.name == PEDAL],
        )
        for one in ordered
        if not one.floating
    )
    return Organ(
        name=name or (book.titles[0] if book.titles else "An organ"),
        place=", ".join(book.titles[1:]),
        keyboards=keyboards,
        divisions=tuple(
            Division(
                slugs[one.name],
                one.name,
                None if one.floating else slugs[one.name],
                one.enclosed,
                tuple(one.stops),
                tuple(one.tremulants),
            )
            for one in ordered
        ),
        couplers=tuple(_known_couplers(book, slugs, {one.id for one in keyboards})),
        accessories=tuple(book.accessories),
    )


def _known_couplers(book: Book, slugs: dict[str, str], keyboards: set[str]) -> Iterator[Coupler]:
    for number, one in book.couplers:
        source, target = slugs.get(one.source), slugs.get(one.target)
        if source is None or target not in keyboards:
            text = next(line.text for line in book.lines if line.line == number)
            book.unread.append(Unread(number, text))
            continue
        yield Coupler(book.slug(one.name), one.name, source, target, one.octave, one.unison_off)
