"""What is written as a stop list reads back as the same organ."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from instruments.compass import Compass
from instruments.mixtures import Zone, parse_ordinals
from instruments.organ import (
    Coupler,
    Coupling,
    Division,
    Half,
    Keyboard,
    KeyboardKind,
    Organ,
    Stop,
    Tremulant,
)
from instruments.pitch import length_label, parse_length
from instruments.stoplist import read_stoplist, write_stoplist
from instruments.stoplist.tables import plain
from instruments.tone import Construction, Family
from tests.builders import a_division, a_stop, an_organ, slug
from tests.reference.scoring import printed_lists

DIVISIONS = ("Great", "Swell", "Choir", "Hauptwerk", "Rückpositiv", "Récit", "Positif", "Bovenwerk")
NAMES = (
    *("Open Diapason", "Stopped Diapason", "Principal", "Twelfth", "Voix Celeste", "Trumpet"),
    *("Gedackt", "Rohrflöte", "Quintadena", "Krummhorn", "Flûte harmonique", "Bourdon", "Holpijp"),
    *("Voce umana", "Violón", "Flautado", "Waldfløjte", "Salicet", "Quaxophone", "Open Diapason I"),
)
LENGTHS = tuple(map(parse_length, ("16", "8", "4", "2 2/3", "2", "1 3/5", "5 1/3")))
COUNTS = ("15.19.22", "19.22.26.29", "12.17", "1.8.12.15.17", "22.26")
MANUAL = Compass(0, 55)


@st.composite
def stops(draw, division, name, lenders):
    length = draw(st.sampled_from(LENGTHS))
    low = draw(st.none() | st.sampled_from([12, 24]))
    return Stop(
        f"{division}/{slugged(f'{name} {length_label(length)}')}",
        name,
        length,
        draw(st.sampled_from(Family)),
        draw(st.sampled_from(Construction)),
        compass=None if low is None else Compass(low, MANUAL.high),
        rank=draw(st.none() | st.sampled_from("AB")),
        half=None if low else draw(st.none() | st.sampled_from(Half)),
        borrowed_from=draw(st.none() | st.sampled_from(lenders)) if lenders else None,
    )


@st.composite
def mixtures(draw, division):
    zones = draw(st.lists(st.sampled_from(COUNTS), min_size=1, max_size=3))
    starts = draw(st.permutations([0, 12, 24]))[: len(zones)]
    lengths = [Zone(start, parse_ordinals(one)) for start, one in zip(starts, zones, strict=True)]
    composition = tuple(sorted(lengths, key=lambda zone: zone.start))
    ranks = len(composition[0].lengths)
    return Stop(
        f"{division}/mixture",
        "Mixture",
        None,
        Family.PRINCIPAL,
        ranks=ranks,
        composition=composition,
    )


@st.composite
def organs(draw):
    names = draw(st.lists(st.sampled_from(DIVISIONS), min_size=1, max_size=3, unique=True))
    divisions, lenders = [], []
    for name in names:
        taken = draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=4, unique=True))
        rows = [draw(stops(slugged(name), one, tuple(lenders))) for one in taken]
        rows += [draw(mixtures(slugged(name)))] if draw(st.booleans()) else []
        shakes = (Tremulant(f"{slugged(name)}/tremulant", "Tremulant"),)
        floating = bool(divisions) and draw(st.booleans())
        home = None if floating else slugged(name)
        shaken = shakes if draw(st.booleans()) else ()
        boxed = draw(st.booleans())
        divisions.append(Division(slugged(name), name, home, boxed, tuple(rows), shaken))
        lenders += [one.id for one in rows if one.borrowed_from is None and one.rank is None][:1]
    return Organ(
        name="St Werrin",
        place=draw(st.sampled_from(["", "Hollowby"])),
        keyboards=tuple(
            Keyboard(one.id, one.name, KeyboardKind.MANUAL, MANUAL)
            for one in divisions
            if one.keyboard
        ),
        divisions=tuple(divisions),
        couplers=tuple(draw(couplers(divisions))),
        accessories=tuple(draw(st.lists(st.just("Six thumb pistons"), max_size=1))),
        pitch_hz=draw(st.sampled_from([440.0, 415.0, 442.0])),
        temperament=draw(st.sampled_from(["equal", "Werckmeister III"])),
        coupling=draw(st.sampled_from(Coupling)),
    )


def slugged(text: str) -> str:
    return slug(plain(text))


@st.composite
def couplers(draw, divisions):
    homes = [one for one in divisions if one.keyboard]
    made = {}
    for _ in range(draw(st.integers(0, 3))):
        source, target = draw(st.sampled_from(divisions)), draw(st.sampled_from(homes))
        octave = draw(st.sampled_from([16, 8, 4]))
        if source is not target:
            name = f"{source.name} to {target.name}" + ("" if octave == 8 else f" {octave}")
            made[name] = Coupler(slugged(name), name, source.id, target.id, octave)
    return list(made.values())


@given(organs())
@settings(deadline=None, max_examples=100)
def test_an_organ_reads_back_as_it_was(organ):
    assert read_stoplist(write_stoplist(organ)).organ == organ


@pytest.mark.parametrize("printed", printed_lists(), ids=lambda one: one.title)
def test_a_list_that_was_read_is_written_and_read_again(printed):
    organ = read_stoplist(printed.text).organ

    assert read_stoplist(write_stoplist(organ)).organ == organ


def test_what_is_written_leaves_nothing_in_doubt():
    reading = read_stoplist(write_stoplist(an_organ()))

    assert reading.unread == ()
    assert reading.assumed == ()


def test_a_tone_is_written_where_the_name_tells_another():
    organ = an_organ(
        great=[a_stop("Oboe 8", family="string"), a_stop("Trumpet 8 (reed full-length)")]
    )

    written = write_stoplist(organ)
    assert "Oboe 8' (tone: string, open)" in written
    assert "Trumpet 8'\n" in written


def test_a_division_on_the_keyboard_of_another_says_so():
    organ = an_organ()
    echo = a_division("Echo", ["Dulciana 8"], keyboard="great")

    written = write_stoplist(replace(organ, divisions=(*organ.divisions, echo)))
    assert "Echo (on the Great, C-c4)" in written


def test_notes_are_kept():
    organ = replace(an_organ(), notes="Wind pressure 70 mm")

    assert read_stoplist(write_stoplist(organ)).organ.notes == "Wind pressure 70 mm"


def test_an_organ_without_stops_is_written_all_the_same():
    organ = replace(an_organ(), divisions=(a_division("Great"),), couplers=())

    assert write_stoplist(organ) == "An organ\n\nGreat (C-c4)\n"


def test_a_compass_of_its_own_is_written_in_full():
    stop = a_stop("Oboe 8", family="reed", compass=Compass(12, 48))

    assert "Oboe 8' (c-c3)" in write_stoplist(an_organ(great=["Principal 8", stop]))
