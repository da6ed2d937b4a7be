"""Fonts: which face a letter is in, how wide words are, and where a line must end.

Sizes are in points, widths in mm.
"""

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

#: One typographic point in mm.
POINT = 25.4 / 72
#: Stands for a character that none of the faces has.
MISSING = "□"

#: The double accidentals lie where PDF text cannot be searched: written with single ones.
_REWRITTEN = str.maketrans({"𝄫": "♭♭", "𝄪": "♯♯"})


class Face(StrEnum):
    """The faces of a card; the value ends the name of the font's file."""

    REGULAR = "source-sans-3-regular"
    SEMIBOLD = "source-sans-3-semibold"
    BOLD = "source-sans-3-bold"
    ACCIDENTALS = "loftbook-accidentals"


@dataclass(frozen=True, slots=True, eq=False)
class Fonts:
    """How wide each character of each face is, in thousandths of the type size."""

    widths: Mapping[Face, Mapping[int, float]]

    def runs(self, text: str, face: Face) -> tuple[tuple[Face, str], ...]:
        """Cut text where the face has to change; what no face has becomes :data:`MISSING`."""
        found = (self._glyph(character, face) for character in text)
        pieces = groupby(found, key=lambda one: one[0])
        return tuple((face, "".join(text for _, text in run)) for face, run in pieces)

    def _glyph(self, character: str, face: Face) -> tuple[Face, str]:
        for candidate in (face, Face.ACCIDENTALS):
            if ord(character) in self.widths[candidate]:
                return candidate, character
        return face, MISSING

    def width(self, text: str, face: Face, size: float) -> float:
        """Give the width of a line of text in mm."""
        units = sum(
            self.widths[run][ord(one)] for run, piece in self.runs(text, face) for one in piece
        )
        return units * size * POINT / 1000

    def wrap(self, text: str, face: Face, size: float, width: float) -> tuple[str, ...]:
        """Break text into lines no wider than ``width`` mm, inside a word only where it must be."""
        lines: list[str] = []
        for word in self._words(text, face, size, width):
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and self.width(longer, face, size) <= width:
                lines[-1] = longer
            else:
                lines.append(word)
        return tuple(self._without_orphan(lines, face, size, width))

    def _without_orphan(self, lines: list[str], face: Face, size: float, width: float) -> list[str]:
        """Give a last line of a few letters (the I of “Open Diapason I”) the word before it."""
        if len(lines) < 2 or len(lines[-1]) > 3 or " " not in lines[-2]:
            return lines
        above, word = lines[-2].rsplit(" ", 1)
        last = f"{word} {lines[-1]}"
        return [*lines[:-2], above, last] if self.width(last, face, size) <= width else lines

    def _words(self, text: str, face: Face, size: float, width: float) -> Iterator[str]:
        for word in text.split(" "):
            if word and self.width(word, face, size) > width:
                yield from self._broken(word, face, size, width)
            elif word:
                yield word

    def _broken(self, word: str, face: Face, size: float, width: float) -> Iterable[str]:
        pieces = [""]
        for character in word:
            if pieces[-1] and self.width(pieces[-1] + character, face, size) > width:
                pieces.append("")
            pieces[-1] += character
        return pieces


def clean(text: str) -> str:
    """Give text as one line: composed accents, single spaces, no invisible characters."""
    composed = unicodedata.normalize("NFC", text.translate(_REWRITTEN))
    visible = "".join(one for one in composed if unicodedata.category(one) not in ("Cf", "Cs"))
    spaced = "".join(" " if unicodedata.category(one) == "Cc" else one for one in visible)
    return " ".join(spaced.split())
