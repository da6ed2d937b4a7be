"""Lines: one piece of a list, read in the place where it stands, into the book."""

import re
from collections.abc import Callable

from instruments.figures import roman
from instruments.lexicon import find_name
from instruments.organ import Half, Stop, Tremulant
from instruments.pitch import length_typeset
from instruments.stoplist.book import Book, Part
from instruments.stoplist.compassline import read_compass
from instruments.stoplist.couplerline import is_coupler_heading
from instruments.stoplist.couplers import part_named, pedals_of
from instruments.stoplist.coupling import read_coupling
from instruments.stoplist.headings import Heading, read_heading
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.notes import LONGEST_NOTE, read_note, read_title
from instruments.stoplist.pieces import unnumbered
from instruments.stoplist.stops import add_stop
from instruments.stoplist.tables import ANY_ROLE, home, homes, plain, word_starts, words, words_of
from instruments.stoplist.tuning import read_tuning
from instruments.tone import Family

_SHARED = re.compile(r",?\s*\bon the (?P<host>[^,()]+)")


def read_whole(book: Book, number: int, line: str) -> str:
    """Read a whole line where its commas part couplers, and not stops; say how, or nothing."""
    if not re.search(r"[,;:·]", line) or len(line) > LONGEST_NOTE:
        return ""
    return read_coupling(book, number, unnumbered(line, numbered=book.numbered))


def read_piece(book: Book, number: int, text: str, told: str = "") -> str:
    """Read one piece; say how in words, or nothing where it is not understood."""
    bare = unnumbered(text, numbered=book.numbered)
    counted = re.match(r"\s*(\d{1,3})\b", text) if bare != text else None
    book.told = told or (counted[1] if counted else "")
    for read in _order(book):
        read_as = read(book, number, bare)
        if read_as:
            return read_as
    return ""


def _order(book: Book) -> tuple[Callable[[Book, int, str], str], ...]:
    if book.section == "couplers":
        return (
            read_compass,
            read_tuning,
            _section,
            read_coupling,
            _named_accessory,
            _heading,
            _tremulant,
            _accessory,
            read_note,
            _leftover,
        )
    return (
        read_compass,
        read_tuning,
        _section,
        _heading,
        read_coupling,
        _tremulant,
        _counted_accessory,
        _stop,
        _accessory,
        read_note,
        read_title,
    )


def _section(book: Book, number: int, text: str) -> str:
    if read_heading(text, book.language):
        return ""
    lone = words("lone_couplers").issuperset(words_of(text)) and not text.rstrip().endswith(":")
    if is_coupler_heading(text) and not lone:
        book.section = "couplers"
        return "heading"
    spoken = words_of(text)
    for half, table in ((Half.BASS, "bass_heading"), (Half.TREBLE, "treble_heading")):
        if spoken and not re.search(r"\d", text) and words(table).issuperset(spoken):
            book.half = half
            book.current = book.current or _unnamed(book, number)
            return f"{half} half"
    plain_line = spoken and not re.search(r"\d", text) and words("subheadings").issuperset(spoken)
    lists = {
        "specification",
        "disposition",
        "stoplist",
        "dispositie",
        "disposizione",
        "stop",
        "composition",
    }
    return "heading" if plain_line and (book.parts or lists & set(spoken)) else ""


def _heading(book: Book, number: int, text: str) -> str:
    shared = _SHARED.search(text)
    found = read_heading(_SHARED.sub("", text), book.language)
    if found is None:
        return ""
    part = begin(book, number, found)
    part.host = shared["host"].strip() if shared else part.host
    book.current, book.section, book.half = part, "stops", None
    return f"division {part.name}"


def _unnamed(book: Book, number: int) -> Part:
    """Begin the one manual of a list whose halves alone have headings."""
    part = Part("Manual", ANY_ROLE)
    book.parts.append(part)
    book.assume(number, "No heading names a keyboard; Manual is taken.")
    return part


def begin(book: Book, number: int, found: Heading) -> Part:
    """Give the division of a heading, a new one where the list has none of that name."""
    one = found.home
    numbered = found.number > 0 and one.role == ANY_ROLE
    name = f"{one.name} {roman(found.number)}" if numbered else one.name
    part = next((known for known in book.parts if known.name == name), None)
    part = part or next((known for known in book.parts if _is_longer(known, name, one.role)), None)
    if part is None:
        part = Part(name, one.role, found.number)
        book.parts.append(part)
    part.enclosed = part.enclosed or found.enclosed
    part.floating = part.floating or found.floating
    part.compass = found.compass or part.compass
    return part


def _is_longer(part: Part, name: str, role: str) -> bool:
    """Say whether a division already there is the one named, in more words: Récit expressif."""
    known, said = words_of(part.name), words_of(name)
    return part.role == role != ANY_ROLE and len(known) > len(said) and known[: len(said)] == said


def _tremulant(book: Book, number: int, text: str) -> str:
    spoken = words_of(text)
    known = words("tremulants")
    if not known & set(spoken) or len(spoken) > 7:
        return ""
    others = [one for one in spoken if one not in known and one not in words("tremulant")]
    part = next((found for found in (part_named(book, one) for one in others) if found), None)
    if any(part_named(book, one) is None and not home(one) for one in others):
        return ""
    part = part or _shaken(book, number)
    if part is None:
        return ""
    part.tremulants.append(Tremulant(book.slug(f"{part.name}/tremulant"), "Tremulant"))
    return f"tremulant of the {part.name}"


def _shaken(book: Book, number: int) -> Part | None:
    """Give the division at hand; behind the pedals or the couplers, guess a manual."""
    if book.section != "couplers" and book.current and not book.current.is_pedal:
        return book.current
    manuals = [part for part in book.parts if not part.is_pedal]
    boxed = [part for part in manuals if part.role == "swell"]
    part = next(iter(boxed or manuals[-1:] or book.parts), None)
    if part and len(manuals) > 1:
        book.assume(number, f"Whose tremulant it is is not written; {part.name} is taken.")
    return part


def _named_accessory(book: Book, number: int, text: str) -> str:
    """Among couplers, a line that begins with an accessory's word heads no division."""
    begins = word_starts("accessories").match(plain(text.lstrip(" .-•*")))
    return _accessory(book, number, text) if begins else ""


def _counted_accessory(book: Book, number: int, text: str) -> str:
    """Among stops, a number before an accessory's word counts it: 4 Afsluitingen."""
    counted = re.match(r"\s*\d{1,2}\s(?=[^\W\d])", text)
    begins = counted and word_starts("accessories").match(plain(text[counted.end() :]))
    return _accessory(book, number, text) if begins else ""


def _accessory(book: Book, number: int, text: str) -> str:
    if len(text) > 300 or not word_starts("accessories").search(plain(text)):
        return ""
    book.accessories.append(text.strip(" .;"))
    return "accessory"


def _leftover(book: Book, number: int, text: str) -> str:
    """Among couplers and accessories whatever is left is an accessory."""
    if len(text) > LONGEST_NOTE or not words_of(text):
        return ""
    book.accessories.append(text.strip(" .;"))
    return "accessory"


def _stop(book: Book, number: int, text: str) -> str:
    if book.current is None:
        return ""
    if _is_device(text):
        return _leftover(book, number, text)
    part = _pedal_of(book, text) or book.current
    stop = add_stop(book, number, part, text, book.told)
    return "" if stop is None else _told(stop, part)


def _is_device(text: str) -> bool:
    """Say whether a piece names a device, such as a Zimbelstern, and no pipes."""
    if not word_starts("accessories").search(plain(text)):
        return False
    match = find_name(text.strip(" .;"))
    if match is None or not match.exact:
        return not figures_in(text)
    return match.entry.family is Family.OTHER and not match.entry.lengths


def _pedal_of(book: Book, text: str) -> Part | None:
    """Give the pedals where the words of a stop name them (Contras), new ones where needed."""
    spoken = words_of(text)[:1]
    heads = homes().get(spoken[0], ()) if spoken else ()
    if not heads or not all(one.is_pedal for one in heads) or not find_name(spoken[0]):
        return None
    return pedals_of(book)


def _told(stop: Stop, part: Part) -> str:
    figure = "" if stop.length is None else f" {length_typeset(stop.length)}"
    return f"stop {stop.name}{figure} on the {part.name}"
