"""Guide words: what a stop is and what is heard, in words for a learner, and why a rule says so."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from instruments.compass import MIDDLE_C, TENOR_C, Compass, key_typeset
from instruments.heard import Note, notes
from instruments.lexicon import Entry, find_name
from instruments.mixtures import Zone, breaks, lengths_at
from instruments.organ import Division, KeyboardKind, Organ, Stop
from instruments.pipework import composition_of, stop_compass
from instruments.pitch import UNISON, is_octave
from instruments.tone import CONSTRUCTION_WORDS, FAMILY_WORDS, Construction, Family
from registrations.checks import RULES
from registrations.checks.kinds import (
    is_chorus_mixture,
    is_chorus_reed,
    is_compound,
    is_mutation,
    is_third,
)
from registrations.checks.words import capital, lengths_words, listed

_REASON = re.compile(r"Why it matters:\s+(.+?[.])(?:\s|$)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class StopWords:
    """A stop in words: its tone and pipes, what it is for, and what its name may hide.

    ``source`` is who says the last two; empty where they follow from the stop's tone and pitch.
    """

    tone: str
    use: str
    trap: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Heard:
    """What sounds when ``key`` is played; ``zones`` are all of its ranks, from break to break.

    ``assumed``: the stop's composition is not known and the customary one stands in for it.
    """

    key: int
    notes: tuple[Note, ...]
    zones: tuple[Zone, ...] = ()
    assumed: bool = False


@cache
def reason_of(rule: str) -> str:
    """Give the first sentence of why a rule matters; StopIteration where there is no such rule."""
    explained = next(one.__doc__ or "" for one in RULES if rule == one.NAME)
    return capital(" ".join(_REASON.findall(explained)[0].split()))


def heard_of(organ: Organ, division: Division, stop: Stop) -> Heard:
    """Give what is heard at middle C, or at the nearest C (else the lowest key) the stop has."""
    compass, zones = stop_compass(organ, division, stop), composition_of(stop)
    key = _shown(compass)
    if not zones:
        return Heard(key, notes(stop, key))
    starts = (compass.low, *(one for one in breaks(zones) if one > compass.low))
    return Heard(
        key,
        notes(replace(stop, composition=zones), key),
        tuple(Zone(start, lengths_at(zones, start)) for start in starts),
        assumed=not stop.composition,
    )


def _shown(compass: Compass) -> int:
    return next((key for key in (MIDDLE_C, TENOR_C) if key in compass), compass.low)


def words_of(organ: Organ, division: Division, stop: Stop) -> StopWords:
    """Give a stop in words: the lexicon's where it knows a stop like this, else by its kind."""
    pedal = _is_pedal(organ, division)
    tone = _tone(stop)
    match = find_name(stop.name, pedal=pedal)
    if match is None or not _is_like(match.entry, stop):
        return StopWords(tone, _use(stop, pedal))
    entry = match.entry
    if match.exact:
        return StopWords(tone, entry.what_for, entry.traps, entry.source)
    use = f"The name is near to {entry.name}. {entry.what_for}"
    return StopWords(tone, use, source=entry.source)


def _is_pedal(organ: Organ, division: Division) -> bool:
    home = division.keyboard
    return home is not None and organ.keyboard(home).kind is KeyboardKind.PEDAL


def _is_like(entry: Entry, stop: Stop) -> bool:
    """Tell whether an entry of the lexicon speaks of a stop of this tone, kind and length."""
    alike = entry.family is stop.family and entry.compound == is_compound(stop)
    fits = stop.length is None or not entry.lengths or stop.length in entry.lengths
    return alike and fits and bool(entry.what_for)


def _tone(stop: Stop) -> str:
    words = []
    if stop.family is not Family.OTHER:
        words.append(FAMILY_WORDS[stop.family])
    if stop.construction is not Construction.OTHER:
        words.append(CONSTRUCTION_WORDS[stop.construction])
    return f"{capital('; '.join(words) or 'a tone of its own kind')}."


#: What stops of a kind are for: common practice, no source.
_KINDS = {
    "percussion": "Struck, not blown: it rings with the keys and is used for a few notes only.",
    "undulating": "Tuned a little apart on purpose: with one soft stop of its own pitch it beats "
    "slowly and warmly.",
    "crown": "The crown of a chorus: several short ranks at once, heard as brightness and not as "
    "notes of their own.",
    "cornet": "Several ranks that melt into one strong colour: it carries a tune.",
    "third": "Colours a unison with a third high above it: reedy and nasal, for a tune more than "
    "for chords.",
    "fifth": "Colours a unison with a fifth above it: it fills the sound out and is never a tune "
    "of its own.",
    "colour": "Colours a unison with a pitch of its own, rare and spicy.",
    "fanfare": "Fire and fullness: it brings a chorus to its height, or carries a tune alone.",
    "reed": "A colour with an edge: it carries a tune, or darkens a chorus.",
}
#: What plain ranks are for by family, at the unison: common practice, no source.
_UNISONS = {
    Family.PRINCIPAL: "The ground of the chorus: hymns and all full sounds are built on it.",
    Family.FLUTE: "A gentle ground: it accompanies, and other stops take their colour on it.",
    Family.STRING: "Quiet and clear: for soft chords that are held.",
    Family.OTHER: "It sounds the notes as they are written.",
}


def _use(stop: Stop, pedal: bool) -> str:
    kind = next(_kinds(stop), None)
    return _KINDS[kind] if kind else _by_length(stop, pedal)


def _kinds(stop: Stop) -> Iterator[str]:
    if stop.family is Family.PERCUSSION or (stop.length is None and not is_compound(stop)):
        yield "percussion"
    if stop.is_undulating:
        yield "undulating"
    if is_compound(stop):
        yield "crown" if is_chorus_mixture(stop) else "cornet"
    if is_mutation(stop):
        yield _colour(stop.length or UNISON)
    if stop.family is Family.REED:
        yield "fanfare" if is_chorus_reed(stop) else "reed"


def _colour(length: Fraction) -> str:
    return "third" if is_third(length) else "fifth" if is_octave(length * 3) else "colour"


def _by_length(stop: Stop, pedal: bool) -> str:
    length = stop.length or UNISON
    if pedal and length >= 2 * UNISON:
        return "The bass under everything: it sounds an octave or more below the written note."
    if pedal and length == UNISON:
        return "Gives the bass its outline: it sounds an octave above the 16."
    if length > UNISON:
        return "Adds weight an octave below: for broad, full playing, seldom for busy chords."
    if length == UNISON:
        return _UNISONS[stop.family]
    if length >= UNISON / 4:
        return "Lifts and clears what is drawn beneath it; alone it is light and high."
    return "The top of the sound: a glint above a chorus that is complete below it."


def heard_words(heard: Heard) -> str:
    """Say what is heard: ``Play c1 (middle C), and you hear c2, an octave higher.``"""
    played = f"Play {key_typeset(heard.key)}{' (middle C)' if heard.key == MIDDLE_C else ''}"
    if not heard.notes:
        return f"{played}, and you hear a sound without a pitch."
    if len(heard.notes) > 1:
        return f"{played}, and you hear {listed(map(note_words, heard.notes))}."
    (note,) = heard.notes
    return f"{played}, and you hear {note_words(note)}, {note.interval}."


def zone_words(zone: Zone) -> str:
    """Say what a break brings: ``from c1: 2⅔′, 2′ and 1⅓′``."""
    return f"from {key_typeset(zone.start)}: {lengths_words(zone.lengths)}"


def note_words(note: Note) -> str:
    """Say a note with its cents from the nearest key: ``g2 (2 cents sharp)``; none under half."""
    cents = round(note.cents)
    if cents == 0:
        return key_typeset(note.key)
    return f"{key_typeset(note.key)} ({abs(cents)} cents {'sharp' if cents > 0 else 'flat'})"
