"""Stops: what a piece says about a stop, and what the lexicon adds."""

from dataclasses import replace
from fractions import Fraction

from instruments.compass import key_typeset
from instruments.mixtures import Composition, Zone, customary, ordinals_label
from instruments.organ import Half, Stop
from instruments.pitch import length_label, length_of_ordinal
from instruments.stoplist.book import Book, Part
from instruments.stoplist.remarks import is_both_halves, with_remarks
from instruments.stoplist.stopline import StopLine, read_stop
from instruments.tone import Construction, Family

_THIRDS = frozenset({length_of_ordinal(10), length_of_ordinal(17), length_of_ordinal(24)})
#: Counts that a chorus mixture climbs, from its lowest rank: common practice.
_LADDER = (1, 5, 8, 12, 15, 19, 22, 26, 29, 33, 36, 40, 43)


def add_stop(book: Book, number: int, part: Part, text: str, told: str = "") -> Stop | None:
    """Add the stop of a piece to a division, to be finished at the end; None when it is none.

    ``told`` is the number that counts it in the list, by which others may borrow it.
    """
    above = book.unfinished[-1][3] if book.unfinished and part.stops else None
    bare = above is not None and not above.figured
    found = read_stop(text, pedal=part.is_pedal, language=book.language, bare=bare)
    if found is None:
        return None
    entry = found.match.entry if found.match else None
    _doubts(book, number, found)
    stop = Stop(
        id=book.slug(f"{part.name}/{_label(found).replace('/', '-')}"),
        name=found.name,
        length=found.length,
        family=entry.family if entry else Family.PRINCIPAL,
        construction=entry.construction if entry else Construction.OPEN,
        ranks=found.ranks,
        half=book.half,
    )
    if told:
        book.numbers.setdefault(told, stop.id)
    book.unfinished.append((number, part, len(part.stops), found))
    part.stops.append(stop)
    if any(is_both_halves(remark) for remark in found.remarks):
        part.stops[-1] = replace(stop, half=Half.BASS)
        book.unfinished.append((number, part, len(part.stops), found))
        part.stops.append(replace(stop, id=book.slug(stop.id), half=Half.TREBLE))
    return stop


def finish_stops(book: Book) -> None:
    """Give every stop what its remarks say, now that all stops are known, and its composition."""
    for number, part, at, found in book.unfinished:
        stop = with_remarks(book, number, part, part.stops[at], found.remarks)
        part.stops[at] = _composed(book, number, stop, found)


def _label(found: StopLine) -> str:
    return found.name if found.length is None else f"{found.name} {length_label(found.length)}"


def _doubts(book: Book, number: int, found: StopLine) -> None:
    for doubt in found.doubts:
        book.assume(number, f"{found.name}: {doubt}.")
    if found.match is None:
        book.assume(number, f"{found.name}: not in the lexicon; taken for a principal.")
    elif not found.match.exact:
        book.assume(number, f"{found.name}: taken for a {found.match.entry.name}.")


def _composed(book: Book, number: int, stop: Stop, found: StopLine) -> Stop:
    entry = found.match.entry if found.match else None
    if stop.composition:
        return stop
    if found.composition:
        start = stop.compass.low if stop.compass else 0
        return replace(stop, composition=(Zone(start, found.composition),))
    if not _compound(stop, found):
        return stop
    start = stop.compass.low if stop.compass else (entry and entry.from_key) or 0
    zones = _customary(stop, entry.counts if entry else (), start)
    if not zones:
        book.assume(number, f"{stop.name}: its composition is not written and not known.")
        return stop
    told = ordinals_label(zones[0].lengths)
    book.assume(
        number,
        f"{stop.name}: its composition is not written; {told} from {key_typeset(start)} is usual.",
    )
    return replace(stop, composition=zones, ranks=len(zones[0].lengths))


def _compound(stop: Stop, found: StopLine) -> bool:
    entry = found.match.entry if found.match else None
    if entry is None:
        return stop.ranks > 2
    if not entry.compound:
        return False
    return stop.ranks > 1 or stop.length is None or not (entry.lengths and stop.length >= 4)


def _customary(stop: Stop, counts: tuple[int, ...], start: int) -> Composition:
    solo = any(length_of_ordinal(count) in _THIRDS for count in counts)
    lengths = tuple(map(length_of_ordinal, counts))
    fits = stop.ranks in {1, len(counts)} or (solo and stop.ranks < len(counts))
    if counts and fits and (solo or stop.length in {None, lengths[0]}):
        return (Zone(start, lengths if stop.ranks == 1 else lengths[-stop.ranks :]),)
    if solo and stop.length is None and stop.ranks <= 2 * len(counts):
        doubled = sorted((*lengths, *lengths[1 : stop.ranks - len(counts) + 1]), reverse=True)
        return (Zone(start, tuple(doubled)),)
    ranks = stop.ranks if stop.ranks > 1 else 4
    climbed = _from(stop.length, ranks)
    if not climbed and ranks > 6:
        climbed = tuple(map(length_of_ordinal, _LADDER[max(0, 9 - ranks) :][:ranks]))
    if climbed or ranks > 6:
        return (Zone(start, climbed),) if len(climbed) == ranks else ()
    return customary(max(2, ranks), start)


def _from(length: Fraction | None, ranks: int) -> tuple[Fraction, ...]:
    """Give so many ranks upward from the one that is written, none where it is not a chorus's."""
    ladder = [length_of_ordinal(count) for count in _LADDER]
    if length not in ladder:
        return ()
    at = ladder.index(length)
    return tuple(ladder[at : at + ranks]) if at + ranks <= len(ladder) else ()
