"""Tonality: the keys of pieces, as they are written for eyes."""

import re

_ACCIDENTALS = {"b": "♭", "♭": "♭", "flat": "♭", "#": "♯", "♯": "♯", "sharp": "♯", "♮": "♮"}
_MODES = {
    "": "", "major": "major", "maj": "major", "minor": "minor", "min": "minor", "m": "minor",
    **{mode: mode for mode in ("dorian", "phrygian", "lydian", "mixolydian", "aeolian")},
}  # fmt: skip
_KEY = re.compile(
    r"(?P<note>[A-G])(?:[\s-]?(?P<accidental>flat|sharp|[b♭#♯♮])(?=$|m|[\s-]))?[\s-]*(?P<mode>[a-z]*)",
    re.IGNORECASE,
)


def key_words(key: str) -> str:
    """Write a key for eyes, ``Eb`` as ``E♭`` and ``f# minor`` as ``F♯ minor``; others as given."""
    match = _KEY.fullmatch(key.strip())
    if match is None or match["mode"].lower() not in _MODES:
        return key
    sign = _ACCIDENTALS.get((match["accidental"] or "").lower(), "")
    return f"{match['note'].upper()}{sign} {_MODES[match['mode'].lower()]}".strip()
