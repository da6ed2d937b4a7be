"""Tidy: a line as it was pasted, without the marks that only its page or its file needed."""

import html
import re
import unicodedata

_TAG = re.compile(
    r"<(/?[a-zA-Z][a-zA-Z0-9]*)\b[^<>]{0,400}>|<!--.{0,400}?-->|<![a-zA-Z][^<>]{0,400}>"
)
_CELLS = frozenset({"td", "/td", "th", "/th"})
_HIDDEN = re.compile(r"<(script|style)\b.*?(?:</\1\s*>|$)", re.IGNORECASE)
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", "01234567890123456789")
_RAISED_FRACTION = re.compile(r"(?<=\d)?([⁰¹²³⁴⁵⁶⁷⁸⁹]{1,2})\s?[/⁄]\s?([₀₁₂₃₄₅₆₇₈₉\d]{1,2})")
#: Gaps wider than any page are narrowed to so many spaces.
WIDEST = 200
_WIDE = re.compile(rf" {{{WIDEST},}}")
#: Where a compass is glued to the word before it: HAUPTWERKC-g3.
_GLUED = re.compile(r"(?<=[^\W\d]{4})(?=C(?:,\s?[DE]){0,2}\s?[-–]\s?[a-g][1-4'’])")
_SPACES = re.compile(r"[\u00a0\u2000-\u200a\u202f\u205f\u3000]")
_UNSEEN = re.compile(r"[\u200b-\u200f\u2060\ufeff\u00ad]")
_MARKDOWN = re.compile(r"\*\*|__|^\s*#{1,6}\s+|^\s*(?:\|\s*)?(?::?-{2,}:?\s*\|\s*)+(?::?-*:?)\s*$")


def tidy_line(line: str) -> str:
    """Give a line without tags, unseen letters and raised figures; table cells parted by tabs."""
    if "<" in line:
        line = _TAG.sub(_spoken, _HIDDEN.sub(" ", line))
    if "&" in line:
        line = html.unescape(line)
    line = _UNSEEN.sub("", _SPACES.sub(" ", unicodedata.normalize("NFC", line)))
    line = _WIDE.sub(" " * WIDEST, line)
    line = _GLUED.sub(" ", line)
    line = _RAISED_FRACTION.sub(_fraction, line).translate(_RAISED)
    return _MARKDOWN.sub("", line).replace("⁄", "/").rstrip()


def _spoken(match: re.Match[str]) -> str:
    name = (match[1] or "").lower()
    return "\t" if name in _CELLS else "; " if name.strip("/") in {"br", "li", "tr", "p"} else ""


def _fraction(match: re.Match[str]) -> str:
    return f" {match[1].translate(_RAISED)}/{match[2].translate(_RAISED)}"
