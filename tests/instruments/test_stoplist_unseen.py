"""What lists that nobody had seen before showed: each line is used as a reader would use it."""

import pytest

from instruments.stoplist import read_stoplist

LIST = "{}\nPrincipal 8'\nOctave 4'\n{}\n"


def names(heading: str, line: str) -> list[str]:
    return [stop.name for _, stop in read_stoplist(LIST.format(heading, line)).organ.stops()][2:]


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("16' Lieblich Gedeckt 61", "Lieblich Gedeckt"),
        ("1-3/5' Tierce TC 49", "Tierce"),
        ("8' Gedeckt (ext. 16') 12", "Gedeckt"),
        ("8 Diapason 73", "Diapason"),
        ("Open Diapason No. 2 8'", "Open Diapason No. 2"),
        ("Bombarde 16' al pedale", "Bombarde"),
    ],
)
def test_a_stop_keeps_its_name_and_nothing_more(line, name):
    assert names("GREAT", line) == [name]


@pytest.mark.parametrize("line", ["4 Afsluitingen", "2 Ventielen", "6 Pistons"])
def test_accessories_that_are_counted_are_no_stops(line):
    reading = read_stoplist(LIST.format("Hoofdwerk", line))

    assert reading.organ.accessories == (line,)


def test_a_pitch_on_la_and_a_temperament_in_one_line():
    organ = read_stoplist(LIST.format("Positif", "Diapason : La 415 Hz. Tempérament inégal")).organ

    assert (organ.pitch_hz, organ.temperament) == (415, "inégal")


@pytest.mark.parametrize(
    ("heading", "name"),
    [
        ("Echo", "Echo"),
        ("ÉCHO", "Écho"),
        ("Récit", "Récit"),
        ("RECIT", "Récit"),
        ("Swell", "Swell"),
    ],
)
def test_a_division_is_named_as_the_list_spells_it(heading, name):
    text = f"Grand-Orgue\nMontre 8\nBourdon 8\n{heading}\nFlûte 8\nTirasse GO"

    assert read_stoplist(text).organ.divisions[1].name == name


def test_short_forms_with_a_stroke_couple():
    text = "Hauptwerk\nPrinzipal 8'\nPedal\nSubbass 16'\nHW/P"

    assert [one.id for one in read_stoplist(text).organ.couplers] == ["hauptwerk-to-pedal"]


def test_halves_head_the_stops_of_a_paragraph():
    bass = "Mano izquierda: Violón 8, Octava 4, Trompeta recordatoria 8"
    text = f"Cadereta\n{bass}\nMano derecha: Clarín 8"
    organ = read_stoplist(text).organ

    assert [(stop.name, stop.half) for _, stop in organ.stops()] == [
        *(("Violón", "bass"), ("Octava", "bass"), ("Trompeta recordatoria", "bass")),
        ("Clarín", "treble"),
    ]
