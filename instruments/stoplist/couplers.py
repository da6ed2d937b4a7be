"""Couplers: the words of a coupler become the divisions that they name in this organ."""

from collections.abc import Iterator
from dataclasses import dataclass

from instruments.organ import Coupler
from instruments.stoplist.book import Book, Part
from instruments.stoplist.couplerline import CouplerLine, manual_number
from instruments.stoplist.reading import Unread
from instruments.stoplist.tables import PEDAL_ROLE, homes

_MAIN = frozenset({"great", "manual"})


@dataclass(frozen=True, slots=True)
class _Ends:
    source: Part
    target: Part
    doubt: str = ""


def couplers_of(book: Book) -> Iterator[Coupler]:
    """Make the couplers of a list; a line whose divisions are not in it becomes unread."""
    backward = _written_backward(book)
    seen: set[tuple[str, str, int, bool]] = set()
    each = [
        (number, line, ends)
        for number, line in book.couplers
        for ends in _every(book, line, backward)
    ]
    for number, line, ends in each:
        if ends is None or _does_nothing(line, ends):
            _lost(book, number)
            continue
        key = (ends.source.slug, ends.target.slug, line.octave, line.unison_off)
        if key in seen:
            continue
        seen.add(key)
        if ends.doubt:
            book.assume(number, ends.doubt)
        yield _coupler(book, line, ends)


def _does_nothing(line: CouplerLine, ends: _Ends) -> bool:
    return ends.source is ends.target and line.octave == 8 and not line.unison_off


def _every(book: Book, line: CouplerLine, backward: bool) -> list[_Ends | None]:
    """Give what a line couples; all that is usual where it only says that couplers are there."""
    if line.link != "all":
        return [_ends(book, line, backward)]
    manuals = [part for part in book.parts if not part.is_pedal]
    pedals = [part for part in book.parts if part.is_pedal]
    doubt = "Which couplers is not written; every manual to the first and to the pedals is taken."
    found: list[_Ends | None] = [_Ends(part, manuals[0], doubt) for part in manuals[1:]]
    return found + [_Ends(part, feet, doubt) for part in manuals for feet in pedals[:1]]


def _lost(book: Book, number: int) -> None:
    text = next(line.text for line in book.lines if line.line == number)
    if not any(one.line == number for one in book.unread):
        book.unread.append(Unread(number, text))


def _coupler(book: Book, line: CouplerLine, ends: _Ends) -> Coupler:
    source, target = ends.source, ends.target
    if line.unison_off:
        name = f"{source.name} unison off"
    elif source is target:
        name = f"{source.name} {'sub-octave' if line.octave == 16 else 'octave'}"
    else:
        name = f"{source.name} to {target.name}" + ("" if line.octave == 8 else f" {line.octave}")
    return Coupler(book.slug(name), name, source.slug, target.slug, line.octave, line.unison_off)


def part_named(book: Book, word: str) -> Part | None:
    """Find the division of the list that a word, a short form or a manual's number means."""
    number = manual_number(word)
    if number:
        return _numbered(book, number)
    those = homes().get(word, ())
    names, roles = {one.name for one in those}, {one.role for one in those}
    named = [part for part in book.parts if part.name in names]
    alike = [part for part in book.parts if part.role in roles]
    return next(iter(named or alike), None)


def _numbered(book: Book, number: int) -> Part | None:
    manuals = [part for part in book.parts if not part.is_pedal]
    exact = [part for part in manuals if part.number == number]
    if exact:
        return exact[0]
    plain = [part for part in manuals if not part.number]
    taken = {part.number for part in manuals}
    free = [one for one in range(1, len(manuals) + 1) if one not in taken]
    return dict(zip(free, plain, strict=False)).get(number)


def _written_backward(book: Book) -> bool:
    """Say whether “A - B” brings B to A here: it does where pedals stand first, as in P-I."""
    votes = 0
    for _, line in book.couplers:
        if line.link == "-" and line.target and not line.pedal:
            votes += _is_pedal_word(line.source) - _is_pedal_word(line.target)
    return votes > 0


def _is_pedal_word(word: str) -> bool:
    return any(one.role == PEDAL_ROLE for one in homes().get(word, ()))


def _ends(book: Book, line: CouplerLine, backward: bool) -> _Ends | None:
    if line.pedal:
        return _to_pedals(book, line)
    if not line.source:
        return _unnamed(book, line)
    source, target = part_named(book, line.source), part_named(book, line.target)
    if source is None or target is None:
        return None
    if line.link == "-":
        return _hyphened(source, target, backward)
    return _turned(source, target)


def _hyphened(source: Part, target: Part, backward: bool) -> _Ends:
    if backward:
        return _Ends(target, source)
    if source.role in _MAIN and target.role not in _MAIN and not target.is_pedal:
        doubt = f"Which way it couples is not written; {target.name} to {source.name} is taken."
        return _Ends(target, source, doubt)
    return _turned(source, target)


def _turned(source: Part, target: Part) -> _Ends:
    if source.is_pedal and not target.is_pedal:
        doubt = f"It names the pedals first; {target.name} to {source.name} is taken."
        return _Ends(target, source, doubt)
    return _Ends(source, target)


def pedals_of(book: Book) -> Part:
    """Give the pedals of a list, new ones where no heading names them."""
    known = next((part for part in book.parts if part.is_pedal), None)
    if known is None:
        known = Part("Pedal", PEDAL_ROLE)
        book.parts.append(known)
        book.assume(0, "No heading names the pedals; they are taken from what is written of them.")
    return known


def _to_pedals(book: Book, line: CouplerLine) -> _Ends | None:
    manuals = [part for part in book.parts if not part.is_pedal]
    main = next((part for part in manuals if part.role in _MAIN), manuals[0] if manuals else None)
    source = part_named(book, line.source) if line.source else main
    if source is None or source.is_pedal:
        source = main
    if source is None:
        return None
    doubt = (
        ""
        if line.source
        else f"What it brings to the pedals is not written; {source.name} is taken."
    )
    return _Ends(source, pedals_of(book), doubt)


def _unnamed(book: Book, line: CouplerLine) -> _Ends | None:
    """Guess an unnamed coupler: the second manual to the first, octaves on the second."""
    manuals = [part for part in book.parts if not part.is_pedal]
    main = next((part for part in manuals if part.role in _MAIN), manuals[0] if manuals else None)
    others = [part for part in manuals if part is not main]
    if main is None:
        return None
    if line.link == "to" and others:
        named = part_named(book, line.target) if line.target else None
        source = named if named and named is not main else others[0]
        doubt = f"What it couples is not written in full; {source.name} to {main.name} is taken."
        return _Ends(source, main, doubt)
    if line.link == "to":
        return None
    boxed = [part for part in manuals if part.role == "swell"]
    own = next(iter(boxed or others[-1:]), main)
    return _Ends(own, own, f"Whose octave it is is not written; {own.name} is taken.")
