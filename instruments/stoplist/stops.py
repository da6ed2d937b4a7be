"""Stops: what a line of a list says about a stop, and what the lexicon adds."""

import re
from dataclasses import replace

from instruments.compass import Compass, key_typeset, parse_compass
from instruments.figures import roman
from instruments.mixtures import Zone, customary, ordinals_label
from instruments.organ import Half, Stop
from instruments.pitch import length_label, length_of_ordinal, length_typeset
from instruments.stoplist.book import Book, Part
from instruments.stoplist.reading import Assumed
from instruments.stoplist.stopline import StopLine, read_stop
from instruments.stoplist.tables import DIVISIONS, PEDAL
from instruments.tone import Construction, Family

_MANUAL = Compass(0, 55)
_FROM = re.compile(
    r"^(?:from\s+)?(?P<start>tenor c|middle c|[a-g]#?[1-4]?)(?:\s+up(?:wards)?)?$", re.I
)
_BORROWED = re.compile(r"^(?:from|borrowed from)\s+(?:the\s+)?(?P<from>[a-z ]+)$", re.I)


def read_stop_line(book: Book, number: int, line: str) -> str:
    """Add the stop of a line to the division at hand; say so, or nothing."""
    part = book.current
    if part is None:
        return ""
    found = read_stop(line, pedal=part.name == PEDAL)
    if found is None:
        return ""
    stop = _made(book, number, part, found)
    part.stops.append(stop)
    figure = "" if stop.length is None else f" {length_typeset(stop.length)}"
    return f"stop {stop.name}{figure} on the {part.name}"


def _made(book: Book, number: int, part: Part, found: StopLine) -> Stop:
    entry = found.match.entry if found.match else None
    for doubt in found.doubts:
        book.assumed.append(Assumed(number, f"{found.name}: {doubt}."))
    if found.match and not found.match.exact:
        book.assumed.append(Assumed(number, f"{found.name}: taken for a {found.match.entry.name}."))
    if entry is None:
        book.assumed.append(
            Assumed(number, f"{found.name}: not in the lexicon; taken for a principal.")
        )
    label = found.name + (f" {length_label(found.length)}" if found.length else "")
    if found.length is None and found.ranks > 1:
        label = f"{found.name} {roman(found.ranks)}"
    stop = Stop(
        id=book.slug(f"{part.name}/{label.replace('/', '-')}"),
        name=found.name,
        length=found.length,
        family=entry.family if entry else Family.PRINCIPAL,
        construction=entry.construction if entry else Construction.OPEN,
        ranks=found.ranks,
    )
    stop = _remarked(book, part, stop, found.remarks)
    return _composed(book, number, stop, found)


def _remarked(book: Book, part: Part, stop: Stop, remarks: tuple[str, ...]) -> Stop:
    for remark in remarks:
        start, lender = _FROM.match(remark), _BORROWED.match(remark)
        if remark.lower() in {"bass", "treble"}:
            stop = replace(stop, half=Half(remark.lower()))
        elif start:
            low = {"tenor c": 12, "middle c": 24}.get(start["start"].lower())
            low = parse_compass(f"{start['start']}-c4").low if low is None else low
            stop = replace(stop, compass=Compass(low, (part.compass or _MANUAL).high))
        elif lender:
            stop = replace(stop, borrowed_from=_lender(book, lender["from"], stop))
    return stop


def _lender(book: Book, where: str, stop: Stop) -> str | None:
    named = DIVISIONS.get(where.split()[0].lower())
    alike = [
        one
        for part in book.parts
        if part.name == named
        for one in part.stops
        if one.name == stop.name
    ]
    return alike[0].id if alike else None


def _composed(book: Book, number: int, stop: Stop, found: StopLine) -> Stop:
    entry = found.match.entry if found.match else None
    if found.composition:
        return replace(stop, composition=(Zone(0, found.composition),))
    if entry is None or not entry.compound or (stop.length is not None and stop.ranks == 1):
        return stop
    counts = entry.counts if entry.counts and stop.ranks in {1, len(entry.counts)} else ()
    start = stop.compass.low if stop.compass else entry.from_key or 0
    zones = (
        (Zone(start, tuple(map(length_of_ordinal, counts))),)
        if counts
        else customary(max(2, stop.ranks), start)
    )
    told = ordinals_label(zones[0].lengths)
    book.assumed.append(
        Assumed(
            number,
            f"{stop.name}: its composition is not written; {told} from {key_typeset(start)} is usual.",
        )
    )
    return replace(stop, composition=zones, ranks=len(zones[0].lengths))
