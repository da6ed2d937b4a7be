"""Stop guide: what its sheets say, a sheet for each division of the organ."""

from collections.abc import Iterator

from instruments.figures import stop_figure, stop_name
from instruments.organ import Division, Organ
from registrations.cards.content import Entry, Sheet, SheetKind, divisions_in_order
from registrations.cards.fonts import clean
from registrations.checks.words import capital
from registrations.guide import GuideEntry, guide
from registrations.guidetext import (
    because,
    clashes_words,
    ground_words,
    labels,
    parties,
    party_name,
    party_words,
)
from registrations.guidewords import Heard, heard_of, heard_words, words_of, zone_words

NOTE = "Worked out from the pipes that speak on this organ: the ear in the nave has the last word."
NO_STOPS = "This organ has no stops yet."


def guide_sheets(organ: Organ) -> tuple[Sheet, ...]:
    """Give the sheets of a stop guide; an organ without stops has one that says so."""
    entries = {entry.stop.id: entry for entry in guide(organ)}
    sheets = tuple(
        _sheet(organ, division.name, NOTE, _entries(organ, division, entries))
        for division in divisions_in_order(organ)
        if division.stops
    )
    return sheets or (_sheet(organ, organ.name, NO_STOPS, ()),)


def _sheet(organ: Organ, title: str, note: str, entries: tuple[Entry, ...]) -> Sheet:
    return Sheet(
        SheetKind.GUIDE,
        day="",
        service="Stop guide",
        church=clean(organ.place),
        title=clean(title),
        label="Stop guide",
        instrument=clean(organ.name),
        note=note,
        entries=entries,
    )


def _entries(organ: Organ, division: Division, entries: dict[str, GuideEntry]) -> tuple[Entry, ...]:
    return tuple(_entry(organ, entries[stop.id]) for stop in division.stops)


def _entry(organ: Organ, entry: GuideEntry) -> Entry:
    words = words_of(organ, entry.division, entry.stop)
    heard = heard_of(organ, entry.division, entry.stop)
    told = (words.tone, words.trap, heard_words(heard), *_breaks(heard), ground_words(entry))
    return Entry(
        stop_figure(entry.stop),
        clean(stop_name(entry.stop)),
        clean(words.use),
        clean(" ".join(told)),
        tuple(note.length for note in heard.notes),
        tuple((head, clean(text)) for head, text in _facts(entry)),
    )


def _breaks(heard: Heard) -> Iterator[str]:
    if len(heard.zones) > 1:
        yield f"It breaks back: {'; '.join(map(zone_words, heard.zones))}."
    if heard.assumed:
        yield "Its ranks are not written down: these are the usual ones for so many."


def _facts(entry: GuideEntry) -> Iterator[tuple[str, str]]:
    if entry.ground.needs:
        yield "Draw it on", f"{labels(entry.ground.needs)}."
    for party in parties(entry):
        where = "" if party.own else f"{party_name(party)}: "
        yield (
            "Goes with",
            f"{where}{capital(party_words(party)) if party.own else party_words(party)}.",
        )
    for said in because((*entry.avoid, *entry.care)):
        yield "Avoid", f"{clashes_words(entry, said)}. {said.reason}"
