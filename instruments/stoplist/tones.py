"""Tones: a stop's family and construction in words, where its name does not tell them."""

import re

from instruments.organ import Stop
from instruments.tone import Construction, Family

_TONE = re.compile(r"tone:\s*(?P<family>[a-z]+)(?:,\s*(?P<construction>[a-z-]+))?")


def tone_words(stop: Stop) -> str:
    """Say a stop's tone as a remark: ``tone: flute, stopped``."""
    return f"tone: {stop.family}, {stop.construction}"


def read_tone(remark: str) -> tuple[Family, Construction] | None:
    """Read a remark that tells a tone; the inverse of :func:`tone_words`, None where it tells none.

    A construction left out is open pipes.
    """
    match = _TONE.fullmatch(remark.strip().lower())
    if match is None:
        return None
    try:
        return Family(match["family"]), Construction(match["construction"] or "open")
    except ValueError:
        return None
