"""Pitch: what a stop's length says about what is heard.

A length is a :class:`~fractions.Fraction` of feet and names the pipe that bottom C of the keyboard
sounds (8 is unison). ``8 / length`` is its place in the harmonic series above the unison.
"""

import math
import re
from fractions import Fraction
from functools import lru_cache

UNISON = Fraction(8)

#: Labels that builders wrote in round feet for off-unison ranks, and the length they mean.
#: 3 and 1 1/2: Silbermann, Freiberg 1714, as printed by Jehmlich (restoration sheet). 5 1/2 and
#: 3 1/2: Miller, The Recent Revolution in Organ Building, 2nd ed. 1913, the stop list of
#: St George's Hall, Liverpool. 5 3/4 and 2 3/4: Mersenne, Harmonie universelle 1636, Organ,
#: prop. XXXI. 6 and 12: common practice, no source.
ROUNDED_LABELS: dict[Fraction, Fraction] = {
    Fraction(3): Fraction(8, 3),
    Fraction(3, 2): Fraction(4, 3),
    Fraction(6): Fraction(16, 3),
    Fraction(12): Fraction(32, 3),
    Fraction(11, 2): Fraction(16, 3),
    Fraction(7, 2): Fraction(16, 5),
    Fraction(23, 4): Fraction(16, 3),
    Fraction(11, 4): Fraction(8, 3),
}

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_TO_VULGAR = {plain: glyph for glyph, plain in _VULGAR.items()}
_SUPERSCRIPT = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_SUBSCRIPT = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_FRACTION_GLYPH = re.compile(f"([{''.join(_VULGAR)}])")
_LENGTH = re.compile(
    r"(?:(?P<whole>[0-9]{1,3})(?:\s+|\s*-\s*(?=.)|$))?(?:(?P<over>[0-9]{1,2})/(?P<under>[0-9]{1,2}))?"
)

_INTERVALS = {
    # Harmonic, reduced into one octave, to the name of the interval above the unison.
    Fraction(1): "",
    Fraction(3, 2): "fifth",
    Fraction(5, 4): "major third",
    Fraction(7, 4): "natural seventh",
    Fraction(9, 8): "major second",
    Fraction(11, 8): "natural eleventh, between a fourth and a tritone",
    Fraction(13, 8): "natural thirteenth, between a minor and a major sixth",
    Fraction(15, 8): "major seventh",
    Fraction(17, 16): "minor second",
    Fraction(19, 16): "minor third",
    Fraction(4, 3): "fourth",
}
_DEGREES = {
    Fraction(1): 1,
    Fraction(9, 8): 2,
    Fraction(5, 4): 3,
    Fraction(3, 2): 5,
    Fraction(7, 4): 7,
    Fraction(15, 8): 7,
}
_BY_DEGREE = {degree: reduced for reduced, degree in _DEGREES.items()}
_COUNTS = ("", "an octave", "two octaves", "three octaves", "four octaves", "five octaves")


class LengthError(ValueError):
    """Text that is not a length; the message is a sentence for the reader."""


def parse_length(text: str) -> Fraction:
    """Read a length in feet: ``8``, ``2 2/3``, ``2⅔``, ``2-2/3``, ``1/2``, with or without a prime.

    Raises:
        LengthError: the text is not a positive length of at most 128 feet.
    """
    plain = _FRACTION_GLYPH.sub(lambda glyph: " " + _VULGAR[glyph[1]], text.replace("⁄", "/"))
    plain = plain.strip().rstrip("'′’ ").strip()
    match = _LENGTH.fullmatch(plain)
    if not plain or match is None or match["under"] in {"0", "00"}:
        raise LengthError(f"“{text}” is not a length. Write feet like 8, 4 or 2 2/3.")
    length = Fraction(match["whole"] or 0)
    if match["over"]:
        length += Fraction(int(match["over"]), int(match["under"]))
    if not 0 < length <= 128:
        raise LengthError(f"“{text}” is not a length an organ pipe can have.")
    return length


def length_label(length: Fraction) -> str:
    """Write a length as plain text, ``2 2/3``; the inverse of :func:`parse_length`."""
    whole, rest = divmod(length, 1)
    parts = [str(whole)] if whole else []
    if rest:
        parts.append(f"{rest.numerator}/{rest.denominator}")
    return " ".join(parts)


def length_typeset(length: Fraction) -> str:
    """Write a length for eyes, with a real fraction and a prime: ``2⅔′``."""
    whole, rest = divmod(length, 1)
    fraction = ""
    if rest:
        plain = f"{rest.numerator}/{rest.denominator}"
        fraction = _TO_VULGAR.get(plain) or (
            f"{rest.numerator}".translate(_SUPERSCRIPT)
            + "⁄"
            + f"{rest.denominator}".translate(_SUBSCRIPT)
        )
    return f"{whole or ''}{fraction}′"


def harmonic(length: Fraction, unison: Fraction = UNISON) -> Fraction:
    """Give the place of a length in the harmonic series of ``unison``: 2 2/3 is 3, 5 1/3 is 3/2."""
    return unison / length


def is_octave(length: Fraction) -> bool:
    """Tell whether a length is the unison or whole octaves from it (32, 16, 8, 4, 2, 1 ...)."""
    place = harmonic(length)
    return _power_of_two(place.numerator) and _power_of_two(place.denominator)


def _power_of_two(number: int) -> bool:
    return number & (number - 1) == 0


def cents(length: Fraction) -> float:
    """Give the pure interval from the unison in cents (a hundredth of an equal semitone)."""
    return 1200 * math.log2(harmonic(length))


@lru_cache(maxsize=256)
def semitones(length: Fraction) -> int:
    """Give the keys from the unison to the nearest key of equal temperament: 2 2/3 is 19."""
    return round(cents(length) / 100)


def deviation(length: Fraction) -> float:
    """Give the cents by which the pure pitch is above (+) or below the nearest tempered key."""
    return cents(length) - 100 * semitones(length)


def ordinal(length: Fraction) -> int | None:
    """Give the diatonic count builders use (8 is 1, 4 is 8, 2 2/3 is 12), or None if there is none.

    ``1 + 7 * octaves + degree``: the rule of common practice; below the unison there is no count.
    """
    octaves, reduced = _octaves_and_rest(harmonic(length))
    if octaves < 0 or reduced not in _DEGREES:
        return None
    return 7 * octaves + _DEGREES[reduced]


def length_of_ordinal(number: int) -> Fraction:
    """Give the length of a diatonic count, 12 -> 2 2/3; 21 is the flat (natural) twenty-first.

    A seventh is the natural one up to the third octave (21) and 15/8 above it (28).

    Raises:
        LengthError: no rank is counted so (an 11th, say).
    """
    octaves, step = divmod(number - 1, 7)
    seventh = Fraction(15, 8) if octaves > 2 else Fraction(7, 4)
    reduced = {**_BY_DEGREE, 7: seventh}.get(step + 1)
    if reduced is None or octaves < 0:
        raise LengthError(f"No rank is counted {number} above the unison.")
    return UNISON / (reduced * Fraction(2) ** octaves)


def interval_name(length: Fraction) -> str:
    """Name what is heard against the unison: ``an octave and a fifth higher``."""
    place = harmonic(length)
    if place == 1:
        return "at the note played"
    if place < 1:
        return _interval(1 / place) + " lower"
    return _interval(place) + " higher"


def _interval(place: Fraction) -> str:
    octaves, reduced = _octaves_and_rest(place)
    count = _COUNTS[octaves] if octaves < len(_COUNTS) else f"{octaves} octaves"
    name = _INTERVALS.get(reduced, f"the ratio {reduced}")
    article = "" if name.startswith("the ") or not name else "a "
    return " and ".join(part for part in (count, article + name) if part)


def speaking_length(length: Fraction, key: int) -> float:
    """Give the feet of open pipe that a nominal length comes to at a key: 2 at c4 is 1/16.

    Pipes halve each octave, in equal steps from key to key.
    """
    return float(length) * math.exp2(-key / 12)


def _octaves_and_rest(place: Fraction) -> tuple[int, Fraction]:
    octaves = math.floor(math.log2(place))
    return octaves, place / Fraction(2) ** octaves


def rank_line(length: Fraction) -> int:
    """Give a length's share of a picture's width: 100 for 32 feet, 12 less for each octave up."""
    return max(4, round(100 + 12 * math.log2(length / 32)))
