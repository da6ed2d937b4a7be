"""Lines: one piece of a list, read in the place where it stands, into the book."""

import re
from collections.abc import Callable

from instruments.compass import compass_name
from instruments.figures import roman
from instruments.lexicon import find_name
from instruments.organ import Half, Stop, Tremulant
from instruments.pitch import length_typeset
from instruments.stoplist.book import Book, Part
from instruments.stoplist.compasses import compass_in
from instruments.stoplist.couplerline import CouplerLine, is_coupler_heading, read_couplers
from instruments.stoplist.couplers import part_named, pedals_of
from instruments.stoplist.headings import Heading, read_heading
from instruments.stoplist.lengths import figures_in
from instruments.stoplist.pieces import unnumbered
from instruments.stoplist.ranks import ranks_in
from instruments.stoplist.stops import add_stop
from instruments.stoplist.tables import ANY_ROLE, home, homes, plain, word_starts, words, words_of
from instruments.stoplist.tuning import read_tuning
from instruments.tone import Family

LONGEST_NOTE = 600
_PITCH = re.compile(
    r"\b[aA]['’′1]?\s?[=:]?\s?(?P<hertz>4\d\d|39\d)(?:[.,]\d)?\s?(?:hz|cps)\b", re.I
)
_PITCH_EQUALS = re.compile(r"\b[aA]['’′1]?\s?=\s?(?P<hertz>4\d\d|39\d)\b")
_LABEL = re.compile(r"([^:—]{2,70}?)\s?(:|\.?\s?—)\s*(?=\S)")
_SHARED = re.compile(r",?\s*\bon the (?P<host>[^,()]+)")
_OF_ALL = re.compile(
    r"\W*(?:manuals|pedals|manuale|manualen|compass|\w*umfang|\w*omvang|\w*omf[aå]ng|étendue)\b",
    re.I,
)
_WHOSE = re.compile(r"p[eé]d|manu|klav|clav", re.I)
_RUN = re.compile(
    r"(?:^|\s+)(?=[^\W\d]\w+ (?:Organ|Division)\s+[^\W\d]|(?:Couplers|COUPLERS|Koppeln)\b)"
)
_TITLED = re.compile(
    r"(?P<title>\S+ (?:Organ|Division|ORGAN)|Couplers|COUPLERS|Koppeln)\s+(?P<rest>[^\W\d].{12,})"
)
_DATE = re.compile(r"\b1[4-9]\d\d\b|\b20\d\d\b")
_FOOTNOTE = re.compile(r"^\s*(?:[*†‡§]|\(?\d\)\s+[a-z]|[¹²³])")
_MANUALS = re.compile(
    r"^\W*(?:manuals?|manuale|manualen|manualumfang|claviers?|clavier|keyboards?|compass|umfang|klaviaturumfang|tonumfang|omvang|\w*omf[aå]ng|pedals?|pedalboard|pedalumfang|pedal|estensione|extensi[oó]n|étendue|omfång|omfang|pédalier|manuaalomvang|pedaalomvang|klavierumfang)\b",
    re.I,
)


def read_whole(book: Book, number: int, line: str) -> str:
    """Read a whole line where its commas part couplers, and not stops; say how, or nothing."""
    if not re.search(r"[,;:·]", line) or len(line) > LONGEST_NOTE:
        return ""
    return _couplers(book, number, unnumbered(line, numbered=book.numbered))


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
            _compass,
            read_tuning,
            _section,
            _couplers,
            _heading,
            _tremulant,
            _accessory,
            _note,
            _leftover,
        )
    return (
        _compass,
        read_tuning,
        _section,
        _heading,
        _couplers,
        _tremulant,
        _stop,
        _accessory,
        _note,
        _title,
    )


def _compass(book: Book, number: int, text: str) -> str:
    """Keep the compass of all manuals or of the pedals; one of a single division heads it."""
    if not _MANUALS.match(text) or compass_in(text) is None:
        return ""
    if read_heading(text) and ("(" in text or not _OF_ALL.match(text)):
        return ""
    told = []
    for part in re.split(r"[;/·]\s|,\s(?=[^\W\d]{3})", text):
        found = compass_in(part)
        if found:
            feet = bool(re.search(r"p[eé]da", part, re.I))
            if not _WHOSE.search(part) and book.current and not book.current.stops:
                book.current.compass = found[0]
                told.append(f"{book.current.name} {compass_name(found[0])}")
                continue
            book.compasses[feet] = found[0]
            told.append(f"{'pedals' if feet else 'manuals'} {compass_name(found[0])}")
    return f"compass of the {', '.join(told)}"


def _section(book: Book, number: int, text: str) -> str:
    if read_heading(text, book.language):
        return ""
    if is_coupler_heading(text):
        book.section = "couplers"
        return "heading"
    spoken = words_of(text)
    for half, table in ((Half.BASS, "bass_heading"), (Half.TREBLE, "treble_heading")):
        if spoken and not re.search(r"\d", text) and words(table).issuperset(spoken):
            book.half = half
            return f"{half} half"
    plain_line = spoken and not re.search(r"\d", text) and words("subheadings").issuperset(spoken)
    return "heading" if plain_line and book.parts else ""


def _heading(book: Book, number: int, text: str) -> str:
    shared = _SHARED.search(text)
    found = read_heading(_SHARED.sub("", text), book.language)
    if found is None:
        return ""
    part = begin(book, number, found)
    part.host = shared["host"].strip() if shared else part.host
    book.current, book.section, book.columns, book.half = part, "stops", [], None
    return f"division {part.name}"


def begin(book: Book, number: int, found: Heading) -> Part:
    """Give the division of a heading, a new one where the list has none of that name."""
    one = found.home
    numbered = found.number > 0 and one.role == ANY_ROLE
    name = f"{one.name} {roman(found.number)}" if numbered else one.name
    part = next((known for known in book.parts if known.name == name), None)
    if part is None:
        part = Part(name, one.role, found.number)
        book.parts.append(part)
    part.enclosed = part.enclosed or found.enclosed
    part.floating = part.floating or found.floating
    part.compass = found.compass or part.compass
    return part


def _couplers(book: Book, number: int, text: str) -> str:
    among = book.section == "couplers"
    label, colon, rest = labelled(text)
    if colon and not is_coupler_heading(label):
        return ""
    pieces = _coupled(rest if colon else text)
    among = among or bool(colon)
    found = _each(_with_octaves(pieces), label if colon else "", among)
    if not found or not all(found):
        return _helps(book, pieces) if colon else ""
    if not among and book.current is not None and _is_stop(book, text):
        return ""
    made = [one for those in found for one in those]
    book.couplers.extend((number, one) for one in made)
    return f"coupler {text.strip()}"


def _helps(book: Book, pieces: list[str]) -> str:
    """Keep what stands behind a heading of accessories, where it is not couplers."""
    helps = [piece.strip(" .;") for piece in pieces if words_of(piece)]
    book.accessories.extend(helps)
    return f"accessory {', '.join(helps)}" if helps else ""


def _each(pieces: list[str], label: str, among: bool) -> list[tuple[CouplerLine, ...]]:
    """Read pieces as couplers, each with what its label says of all: Tirasses, Suboktavkoppeln.

    A piece that says too little takes the first piece's first word.
    """
    lead = pieces[0].split()[0] if pieces and pieces[0].strip() else ""
    return [
        read_couplers(f"{label} {piece}".strip(), among_couplers=among)
        or read_couplers(piece, among_couplers=among)
        or read_couplers(f"{lead} {piece}", among_couplers=among)
        for piece in pieces
    ]


def labelled(text: str) -> tuple[str, str, str]:
    """Part a line at the colon or dash behind its first words: Great Organ.— is a label."""
    match = _LABEL.match(text)
    return (match[1].strip(" ."), match[2], text[match.end() :]) if match else ("", "", text)


def runs_of(line: str) -> list[str]:
    """Part a whole list that runs on in one line before each of its headings."""
    return (
        [run for run in _RUN.split(line) if run.strip()] if len(_RUN.findall(line)) > 1 else [line]
    )


def rest_is_stops(text: str) -> bool:
    """Say whether a text has the figures of at least two stops."""
    return len(figures_in(text)) + len(ranks_in(text)) > 1


def heading_lead(book: Book, line: str) -> tuple[str, str]:
    """Part the heading of a paragraph from its stops; no heading where it has none."""
    label, sign, rest = labelled(line)
    if sign and read_heading(label, book.language):
        return label, rest
    titled = _TITLED.match(line)
    if titled and rest_is_stops(titled["rest"]) and read_heading(titled["title"], book.language):
        return titled["title"], titled["rest"]
    label, sign, rest = line.partition(". ")
    if sign and rest.count(",") > 1 and read_heading(label, book.language):
        return label, rest
    return "", line


def _coupled(text: str) -> list[str]:
    """Part couplers at their commas, or before each that names two keyboards."""
    pieces = re.split(r"[;,•]\s+|\s·\s", text)
    if len(pieces) > 1 or len(re.findall(r"\sto\s", text)) < 2:
        return pieces
    return re.split(r"\s+(?=\w+\sto\s)", text)


def _with_octaves(pieces: list[str]) -> list[str]:
    """Join figures that a comma parted from their coupler: Sw to Gt 16, 8, 4."""
    joined: list[str] = []
    for piece in pieces:
        if joined and not words_of(piece):
            joined[-1] += f" {piece}"
        elif piece.strip():
            joined.append(piece)
    return joined


def _is_stop(book: Book, text: str) -> bool:
    match = find_name(re.sub(r"[\d'’′]", "", text).strip())
    return (
        match is not None
        and match.exact
        and not re.search(r"octave|unison|\bto\b|/|koppel", text, re.I)
    )


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
    return match is not None and match.entry.family is Family.OTHER and not match.entry.lengths


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


def _note(book: Book, number: int, text: str) -> str:
    pitch = _PITCH.search(text) or _PITCH_EQUALS.search(text)
    if pitch:
        book.pitch = float(pitch["hertz"])
    spoken = words_of(text)
    begins = bool(spoken) and (bool(words("note") & set(spoken[:2])) or bool(_FOOTNOTE.match(text)))
    dated = bool(_DATE.search(text)) and bool(book.titles or book.parts)
    if not (pitch or begins or dated) or len(text) > LONGEST_NOTE or text.rstrip().endswith("?"):
        return ""
    book.notes.append(text.strip())
    return f"pitch {book.pitch:g} Hz" if pitch else "note"


def _title(book: Book, number: int, text: str) -> str:
    if (
        book.parts
        or len(book.titles) >= 3
        or len(text) > 120
        or text.endswith("?")
        or not words_of(text)
    ):
        return ""
    book.titles.append(text.strip(" .,;"))
    return "name of the organ" if len(book.titles) == 1 else "place"
