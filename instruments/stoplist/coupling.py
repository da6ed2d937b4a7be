"""Coupling: pieces and lines of a list that couple keyboards, into the book."""

import re
from dataclasses import replace

from instruments.lexicon import find_name
from instruments.stoplist.book import Book
from instruments.stoplist.couplerline import (
    APART,
    CouplerLine,
    is_coupler_heading,
    read_couplers,
)
from instruments.stoplist.paragraphs import labelled
from instruments.stoplist.tables import words, words_of


def read_coupling(book: Book, number: int, text: str) -> str:
    """Keep the couplers of a text, all of which must be; say so, or nothing."""
    among = book.section == "couplers"
    label, colon, rest = labelled(text)
    if colon and not is_coupler_heading(label):
        return ""
    pieces = APART.split(rest if colon else text)
    among = among or bool(colon) or _bare_octave(book, text)
    found = _each(_with_octaves(pieces), label if colon else "", among)
    if not found or not (all(found) or colon):
        return ""
    helped = _helps(
        book, [piece for piece, one in zip(_with_octaves(pieces), found, strict=True) if not one]
    )
    if not any(found):
        return helped
    if not among and book.current is not None and _is_stop(text):
        return ""
    made = [_owned(book, one) for those in found for one in those]
    book.couplers.extend((number, one) for one in made)
    return f"coupler {text.strip()}"


def _bare_octave(book: Book, text: str) -> bool:
    """Say whether a text is Octave, Sub Octave or Unison Off among stops that all have figures."""
    own = [found for _, part, _, found in book.unfinished if part is book.current]
    spoken = set() if re.search(r"\d", text) else set(words_of(text))
    bare = spoken <= words("sub") | words("super") | words("off") | {"unison"} and spoken
    return bool(bare) and len(own) > 2 and all(one.figured for one in own)


def _owned(book: Book, line: CouplerLine) -> CouplerLine:
    """Give a coupler that names no division to the division at hand."""
    own_kind = line.link == "" and not line.source
    if not own_kind or book.section == "couplers" or not book.current:
        return line
    own = " ".join(words_of(book.current.name))
    return replace(line, source=own, target=own)


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
        or _of_lead(lead, piece, among)
        or read_couplers(piece, among_couplers=among)
        for piece in pieces
    ]


def _of_lead(lead: str, piece: str, among: bool) -> tuple[CouplerLine, ...]:
    """Read a piece that names no division as one of the lead's: Swell octave, unison off."""
    made = read_couplers(piece, among_couplers=among)
    if any(one.source or one.target or one.pedal for one in made):
        return ()
    return read_couplers(f"{lead} {piece}", among_couplers=among)


def _with_octaves(pieces: list[str]) -> list[str]:
    """Join figures that a comma parted from their coupler: Sw to Gt 16, 8, 4."""
    joined: list[str] = []
    for piece in pieces:
        if joined and not words_of(piece):
            joined[-1] += f" {piece}"
        elif piece.strip():
            joined.append(piece)
    return joined


def _is_stop(text: str) -> bool:
    """Say whether a text names a stop or begins with one and its figure: Oboe 8' al pedale."""
    name, *rest = re.split(r"\s\d", text, maxsplit=1)
    if re.search(r"octave|unison|\bto\b|/|koppel", text if not rest else name, re.I):
        return False
    names = (re.sub(r"[\d'’′]", "", text).strip(), name)
    return any((match := find_name(one)) is not None and match.exact for one in names)
