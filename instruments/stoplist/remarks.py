"""Remarks: what stands beside a stop's figures: a half, a compass, a lender, a rank's letter."""

import re
from dataclasses import replace
from fractions import Fraction

from instruments.compass import Compass, CompassError, parse_compass, parse_key
from instruments.mixtures import Composition, Zone
from instruments.organ import Half, Stop
from instruments.stoplist.book import Book, Part
from instruments.stoplist.compasses import compass_in
from instruments.stoplist.couplers import part_named
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.ranks import composition_in
from instruments.stoplist.tables import plain, words, words_of
from instruments.stoplist.tones import read_tone

_MANUAL, _FEET = Compass(0, 55), Compass(0, 29)
_FROM = re.compile(
    r"^(?:(?:from|ab|vanaf|van|à partir d[eu]|dès|desde|da|fra|från|fr\.?)\s+)?"
    r"(?P<start>(?:do|ut)\s?[23]|(?:du\s)?[23]e?d?\s?(?:do|ut)|tenor\s?c|t\.?c\.?|middle\s?c|[A-Ga-g][#♯b♭]?[0-4]?['’′]{0,3})"
    r"(?:\s+(?:up(?:wards)?|an|upward))?$",
    re.IGNORECASE,
)
_LENT = re.compile(
    r"^(?:\d{1,2}\s+)?(?:borrowed\s+)?(?:from|aus|vom|van|uit|du|de|dal?|del?|fra|från|fr)\b\.?\s+(?P<whom>.+)$"
    r"|^(?:transmission|transm?\.?|tr|borrowed|duplex|emprunt\w*)\b[:,]?\s*(?:(?:from|aus|du|vom|van|uit)\s+)?(?P<lent>.*)$",
    re.IGNORECASE,
)
_EXTENDED = re.compile(
    r"^(?:ext(?:ension|ended)?|verl(?:ängerung|\.)?|uitbreiding|unit)\b\.?[:,]?\s*(?:from|of|aus)?\s*(?P<whom>.*)$",
    re.IGNORECASE,
)
_LETTER = re.compile(r"^(?:(?=[A-Z]$)|rank )(?P<rank>.+)$")
_ZONES = re.compile(
    r"(?:^|[;/|]|,\s)\s*(?P<key>[A-G]{1,2}#?|[a-g]#?[1-4]?)\s*[:=]?\s+(?P<counts>\d[\d.,\s]+)"
)
_HALVES = ((Half.BASS, "bass"), (Half.TREBLE, "treble"))


def with_remarks(book: Book, number: int, part: Part, stop: Stop, remarks: tuple[str, ...]) -> Stop:
    """Give a stop with what its remarks say; a remark that says nothing of it is let be."""
    for remark in remarks:
        for read in (_toned, _lettered, _zoned, _halved, _partial, _extended, _borrowed):
            changed = read(book, number, part, stop, remark.strip(" .,;"))
            if changed is not None:
                stop = changed
                break
    return stop


def _toned(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    told = read_tone(remark)
    return replace(stop, family=told[0], construction=told[1]) if told else None


def _zoned(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    zones: list[Zone] = []
    for match in _ZONES.finditer(remark):
        found = composition_in(match["counts"].strip(" ,."))
        if found:
            zones.append(Zone(parse_key(match["key"]), found.lengths))
    composition: Composition = tuple(sorted(zones, key=lambda zone: zone.start))
    if not composition or len({zone.start for zone in composition}) < len(composition):
        return None
    return replace(stop, composition=composition, ranks=len(composition[0].lengths))


def _halved(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    spoken = words_of(remark)
    for half, table in _HALVES:
        if spoken and words(table).issuperset(spoken):
            return replace(stop, half=half)
    return None


def is_both_halves(remark: str) -> bool:
    """Say whether a remark tells of two controls, one for each half: B/D, bass and treble."""
    spoken = set(words_of(remark)) - {"and", "und", "et", "y", "e", "en"}
    bass, treble = words("bass"), words("treble")
    return bool(spoken & bass and spoken & treble) and spoken <= bass | treble


def _partial(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    home = _home_compass(book, part)
    try:
        return replace(stop, compass=parse_compass(remark))
    except CompassError:
        written = compass_in(remark)
    if written and written[2] - written[1] >= len(remark) - 2 and written[1] == 0 and "-" in remark:
        return replace(stop, compass=written[0])
    match = _FROM.match(remark)
    if match is None:
        return None
    low = _start(match["start"])
    return replace(stop, compass=Compass(low, home.high)) if low and low < home.high else None


def _home_compass(book: Book, part: Part) -> Compass:
    """Give the compass of a division's keys as far as it is told by now, here or of another."""
    told = (one.compass for one in book.parts if one.is_pedal is part.is_pedal and one.compass)
    known = part.compass or book.compasses.get(part.is_pedal) or next(told, None)
    return known or (_FEET if part.is_pedal else _MANUAL)


def _start(text: str) -> int | None:
    said = plain(text).replace(" ", "").replace(".", "")
    french = re.fullmatch(r"(?:du)?(?:(?:do|ut)([23])|([23])e?d?(?:do|ut))", said)
    if french:
        return 12 * (int(french[1] or french[2]) - 1)
    if said in {"tenorc", "tc"}:
        return 12
    if said == "middlec":
        return 24
    primes = sum(text.count(mark) for mark in "'’′")
    key = text.rstrip("'’′") + (str(primes) if primes else "")
    try:
        return parse_key(key.replace("0", ""))
    except CompassError:
        return None


def _lettered(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    """Give the rank that a letter names; B and D are halves where the other half is there too."""
    match = _LETTER.match(remark)
    if match is None:
        return None
    others = {"B": {"D", "S", "T"}, "D": {"B"}, "S": {"B"}, "T": {"B"}}.get(remark, set())
    halved = any(
        found.name == stop.name and others.intersection(found.remarks)
        for _, home, _, found in book.unfinished
        if home is part
    )
    return None if halved else replace(stop, rank=match["rank"])


def _extended(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    match = _EXTENDED.match(remark)
    if match is None:
        return None
    whom = match["whom"].strip()
    lender = _lender(book, part, stop, whom) if whom else _nearest(part, stop)
    if lender is None:
        book.assume(number, f"{stop.name}: what it extends is not found.")
        return stop
    book.assume(number, f"{stop.name}: taken to extend {lender.name}.")
    return replace(stop, borrowed_from=lender.id)


def _nearest(part: Part, stop: Stop) -> Stop | None:
    """Give the stop above it in the list that is of its name, or else of its family."""
    at = next(place for place, one in enumerate(part.stops) if one.id == stop.id)
    above = [one for one in part.stops[:at] if one.family is stop.family]
    return _named(above, words_of(stop.name), None) or (above[-1] if above else None)


def _borrowed(book: Book, number: int, part: Part, stop: Stop, remark: str) -> Stop | None:
    match = _LENT.match(remark) or _owned(book, part, remark)
    if match is None:
        return None
    whom = (match["whom"] or match["lent"] or "").strip(" .,;")
    if re.fullmatch(r"(?:#|nr?o?\.?)?\s*\d+", whom, re.IGNORECASE):
        return _by_number(book, number, stop, re.sub(r"\D", "", whom))
    lender = _lender(book, part, stop, whom)
    if lender is None:
        book.assume(number, f"{stop.name}: what it is borrowed from (“{remark}”) is not found.")
        return stop
    if lender.name != stop.name:
        book.assume(number, f"{stop.name}: taken to be borrowed from {lender.name}.")
    return replace(stop, borrowed_from=lender.id)


def _owned(book: Book, part: Part, remark: str) -> re.Match[str] | None:
    """Give a match where another division alone is named, (Great) say."""
    owner = part_named(book, " ".join(words_of(remark)))
    return None if owner is None or owner is part else re.match("(?P<whom>.+)(?P<lent>)", remark)


def _by_number(book: Book, number: int, stop: Stop, told: str) -> Stop:
    lender = book.numbers.get(told)
    if lender is None or lender == stop.id:
        book.assume(number, f"{stop.name}: there is no stop numbered {told} above it.")
        return stop
    return replace(stop, borrowed_from=lender)


def _lender(book: Book, part: Part, stop: Stop, whom: str) -> Stop | None:
    """Find the lender in the division named, or of the name or the length given."""
    figures = figures_in(whom)
    length = figures[0].length if figures else stop.length
    if figures and not words_of(whom):
        same = [one for one in part.stops if one.family is stop.family and one.id != stop.id]
        return next((one for one in same if one.length == length), None)
    owner, rest = _owner(book, words_of(whom))
    parts = [owner] if owner else [part, *(one for one in book.parts if one is not part)]
    stops = [one for each in parts for one in each.stops if one.id != stop.id]
    named = _named(stops, rest, length)
    if named or rest:
        return named or _named(stops, words_of(stop.name), length)
    own = [one for one in stops if one.name == stop.name and one.length == length]
    return next(iter(own), None) or _named(stops, words_of(stop.name), length)


def _owner(book: Book, spoken: list[str]) -> tuple[Part | None, list[str]]:
    """Give the division that the first words name, and the words behind it."""
    for size in (3, 2, 1):
        found = part_named(book, " ".join(spoken[:size])) if size <= len(spoken) else None
        if found is not None:
            return found, spoken[size:]
    return None, spoken


def _named(stops: list[Stop], wanted: list[str], length: Fraction | None) -> Stop | None:
    """Give the stop of these words, of the length first; else one that shares a word with them."""
    exact = [one for one in stops if words_of(one.name) == wanted]
    exact += [one for one in stops if set(words_of(one.name)) == set(wanted)]
    alike = [one for one in stops if set(words_of(one.name)) & set(wanted)]
    found = exact or alike
    return next((one for one in found if one.length == length), next(iter(found), None))
