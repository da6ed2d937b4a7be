"""Assemble: the lines of a list, one after another, into an organ."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from instruments.compass import (
    Compass,
    CompassError,
    compass_name,
    compass_of_size,
    key_typeset,
    parse_compass,
)
from instruments.figures import roman
from instruments.mixtures import Zone, customary, ordinals_label
from instruments.organ import (
    Coupler,
    Division,
    Half,
    Keyboard,
    KeyboardKind,
    Organ,
    Stop,
    Tremulant,
)
from instruments.pitch import length_label, length_of_ordinal, length_typeset
from instruments.stoplist.couplerline import CouplerLine, read_couplers
from instruments.stoplist.reading import Assumed, LineRead, Reading, StoplistError, Unread
from instruments.stoplist.stopline import StopLine, read_stop
from instruments.stoplist.tables import ACCESSORY_WORDS, DIVISIONS, HEADING_WORDS, PEDAL
from instruments.tone import Construction, Family

LONGEST, MOST_STOPS = 200_000, 2_000
_MANUAL, _FEET = Compass(0, 55), Compass(0, 29)
_COMPASS = re.compile(r"\b([A-G]{1,3}#?(?:,[A-G])?)\s*(?:-|–|to)\s*([a-gA-G]#?b?[1-6]?)\b")
_NOTES = re.compile(r"\b(\d{2})\s*(?:notes|keys)\b", re.I)
_FROM = re.compile(
    r"^(?:from\s+)?(?P<start>tenor c|middle c|[a-g]#?[1-4]?)(?:\s+up(?:wards)?)?$", re.I
)
_BORROWED = re.compile(r"^(?:from|borrowed from)\s+(?:the\s+)?(?P<from>[a-z ]+)$", re.I)


@dataclass(slots=True)
class _Part:
    """A division while its lines are read."""

    name: str
    enclosed: bool = False
    floating: bool = False
    compass: Compass | None = None
    stops: list[Stop] = field(default_factory=list)
    tremulants: list[Tremulant] = field(default_factory=list)


@dataclass(slots=True)
class _Book:
    """What has been read so far."""

    parts: list[_Part] = field(default_factory=list)
    current: _Part | None = None
    couplers: list[tuple[int, CouplerLine]] = field(default_factory=list)
    accessories: list[str] = field(default_factory=list)
    titles: list[str] = field(default_factory=list)
    compasses: dict[bool, Compass] = field(default_factory=dict)
    unread: list[Unread] = field(default_factory=list)
    assumed: list[Assumed] = field(default_factory=list)
    lines: list[LineRead] = field(default_factory=list)
    taken: set[str] = field(default_factory=set)

    def slug(self, text: str) -> str:
        base = re.sub(r"[^a-z0-9/]+", "-", text.lower()).strip("-") or "control"
        slug, number = base, 1
        while slug in self.taken:
            number += 1
            slug = f"{base}-{number}"
        self.taken.add(slug)
        return slug


def read_stoplist(text: str, name: str = "") -> Reading:
    """Read a stop list; ``name`` is given to the organ in place of the first line's.

    Raises:
        StoplistError: there is no text, too much of it, it is not text, or no stop is in it.
    """
    _refuse(text)
    book = _Book()
    for number, line in enumerate(text.splitlines(), start=1):
        if line.strip():
            read_as = _read_line(book, number, line)
            if not read_as:
                book.unread.append(Unread(number, line.strip()))
            book.lines.append(LineRead(number, line.strip(), read_as or "not read"))
    stops = sum(len(part.stops) for part in book.parts)
    if stops == 0:
        raise StoplistError(
            "No stop was found. Paste headings such as GREAT and a stop a line, like Principal 4."
        )
    if stops > MOST_STOPS:
        raise StoplistError(
            f"There are {stops} stops in it; {MOST_STOPS} is the most that is read at once."
        )
    organ = _organ(book, name)
    return Reading(organ, tuple(book.unread), tuple(book.assumed), tuple(book.lines))


def _refuse(text: str) -> None:
    if not text.strip():
        raise StoplistError("There is no text. Paste a stop list: headings, and a stop a line.")
    if len(text) > LONGEST:
        raise StoplistError(
            f"The text has {len(text):,} letters; {LONGEST:,} is the most that is read."
        )
    if "\x00" in text or sum(one.isprintable() or one.isspace() for one in text) < 0.9 * len(text):
        raise StoplistError(
            "This is not text but the inside of some other file. Copy the list as text."
        )


def _read_line(book: _Book, number: int, line: str) -> str:
    for read in (_compass, _heading, _couplers, _tremulant, _accessory, _stop, _title):
        read_as = read(book, number, line.strip())
        if read_as:
            return read_as
    return ""


def _heading(book: _Book, number: int, line: str) -> str:
    bare = re.sub(r"[()\[\]:.,;–—-]", " ", _NOTES.sub(" ", _COMPASS.sub(" ", line))).lower()
    words = bare.split()
    named = [word for word in words if word in DIVISIONS]
    if (
        not named
        or words[0] not in DIVISIONS | {"the": ""}
        or set(words) - set(DIVISIONS) - HEADING_WORDS
    ):
        return ""
    if (
        len(words) > 1
        and not set(words[1:]) & HEADING_WORDS
        and not _COMPASS.search(line)
        and not _NOTES.search(line)
    ):
        return ""
    part = _Part(
        DIVISIONS[named[0]],
        "unenclosed" not in words
        and bool({"enclosed", "expressive", "box", "expression"} & set(words)),
        "floating" in words,
    )
    known = next((one for one in book.parts if one.name == part.name), None)
    if known is None:
        book.parts.append(part)
    book.current = known or part
    book.current.compass = _read_compass(line) or book.current.compass
    return f"division {part.name}"


def _read_compass(line: str) -> Compass | None:
    match = _COMPASS.search(line)
    if match:
        try:
            return parse_compass(f"{match[1]}-{match[2]}")
        except CompassError:
            pass
    notes = _NOTES.search(line)
    return compass_of_size(int(notes[1])) if notes and 12 <= int(notes[1]) <= 97 else None


def _compass(book: _Book, number: int, line: str) -> str:
    compass = _read_compass(line)
    feet = bool(re.search(r"\bpedals?\b", line, re.I))
    if compass is None or not re.match(
        r"\W*(?:manuals|pedals|compass|keyboards|pedalboard)\b(?!.*\borgan\b)", line, re.I
    ):
        return ""
    book.compasses[feet] = compass
    return f"compass of the {'pedals' if feet else 'manuals'} {compass_name(compass)}"


def _couplers(book: _Book, number: int, line: str) -> str:
    if line.lower().strip(" :") in {"couplers", "accessories"}:
        return "heading"
    found = read_couplers(line)
    book.couplers.extend((number, one) for one in found)
    return f"coupler {', '.join(one.name for one in found)}" if found else ""


def _tremulant(book: _Book, number: int, line: str) -> str:
    match = re.fullmatch(r"\W*(?:(\w+)\s+)?tremul(?:ant|o)\W*(?:to\s+(\w+))?\W*", line, re.I)
    if match is None or book.current is None:
        return ""
    named = DIVISIONS.get((match[1] or match[2] or "").lower())
    part = next((one for one in book.parts if one.name == named), book.current)
    part.tremulants.append(Tremulant(book.slug(f"{part.name}/tremulant"), "Tremulant"))
    return f"tremulant of the {part.name}"


def _accessory(book: _Book, number: int, line: str) -> str:
    if not any(word in line.lower() for word in ACCESSORY_WORDS) or len(line) > 200:
        return ""
    book.accessories.append(line.strip(" .;"))
    return "accessory"


def _title(book: _Book, number: int, line: str) -> str:
    if book.parts or len(book.titles) >= 3 or len(line) > 120 or line.endswith("?"):
        return ""
    book.titles.append(line.strip(" .,;"))
    return "name of the organ" if len(book.titles) == 1 else "place"


def _stop(book: _Book, number: int, line: str) -> str:
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


def _made(book: _Book, number: int, part: _Part, found: StopLine) -> Stop:
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


def _remarked(book: _Book, part: _Part, stop: Stop, remarks: tuple[str, ...]) -> Stop:
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


def _lender(book: _Book, where: str, stop: Stop) -> str | None:
    named = DIVISIONS.get(where.split()[0].lower())
    alike = [
        one
        for part in book.parts
        if part.name == named
        for one in part.stops
        if one.name == stop.name
    ]
    return alike[0].id if alike else None


def _composed(book: _Book, number: int, stop: Stop, found: StopLine) -> Stop:
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


def _organ(book: _Book, name: str) -> Organ:
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


def _known_couplers(book: _Book, slugs: dict[str, str], keyboards: set[str]) -> Iterator[Coupler]:
    for number, one in book.couplers:
        source, target = slugs.get(one.source), slugs.get(one.target)
        if source is None or target not in keyboards:
            text = next(line.text for line in book.lines if line.line == number)
            book.unread.append(Unread(number, text))
            continue
        yield Coupler(book.slug(one.name), one.name, source, target, one.octave, one.unison_off)
