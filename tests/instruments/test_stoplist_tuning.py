"""Lines about the whole organ: its compasses, pitch, temperament and action."""

import pytest

from instruments.compass import compass_name
from instruments.organ import Coupling
from instruments.stoplist import read_stoplist
from instruments.stoplist.compasses import compass_in

LIST = "GREAT\nPrincipal 8\nFlute 4\nPEDAL\nBourdon 16\n\n"


@pytest.mark.parametrize(
    ("line", "pitch", "temperament"),
    [
        ("a1 = 415 Hz", 415, "equal"),
        ("Pitch: 442.5", 442.5, "equal"),
        ("Stimmtonhöhe: 443 Hz bei 20 °C", 443, "equal"),
        ("Temperament: Werckmeister III", 440, "Werckmeister III"),
        ("Stimmung: werckmeister iii", 440, "Werckmeister III"),
        ("Gleichschwebende Stimmung", 440, "equal"),
        ("Diapason 415 Hz, tempérament mésotonique", 415, "mésotonique"),
        ("Temperament: after Neidhardt", 440, "after Neidhardt"),
    ],
)
def test_pitch_and_temperament(line, pitch, temperament):
    organ = read_stoplist(LIST + line).organ

    assert (organ.pitch_hz, organ.temperament) == (pitch, temperament)


def test_a_list_that_says_nothing_is_at_440_and_equal():
    organ = read_stoplist(LIST).organ

    assert (organ.pitch_hz, organ.temperament) == (440, "equal")
    assert organ.coupling is Coupling.DIRECT


def test_the_way_couplers_act_is_read():
    assert read_stoplist(LIST + "Coupling: chained").organ.coupling is Coupling.CHAINED


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("CC to G, 56 notes", "C-g3"),
        ("CC to C, 61 notes", "C-c4"),
        ("CCC to F, 30 notes", "C-f1"),
        ("C–g3", "C-g3"),
        ("C-f'''", "C-f3"),
        ("C,D-c3", "C,D-c3"),
        ("CDE-c'''", "C,D,E-c3"),
        ("54 notes", "C-f3"),
        ("CED-c3", "C-c3"),
        ("GG to f3", "GG-f3"),
    ],
)
def test_a_compass_is_read_in_every_dress(text, name):
    assert compass_name(compass_in(text)[0]) == name


@pytest.mark.parametrize("text", ["Principal 8", "C", "12 notes", "1843-1897", "c-C", "C-h3"])
def test_other_text_tells_no_compass(text):
    assert compass_in(text) is None


def test_the_compasses_of_manuals_and_pedals_are_kept():
    organ = read_stoplist(LIST + "Manuals: C-c4. Pedals: C-g1").organ

    assert [compass_name(one.compass) for one in organ.keyboards] == ["C-c4", "C-g1"]


def test_a_compass_that_nobody_told_is_assumed():
    reading = read_stoplist(LIST)

    assert [compass_name(one.compass) for one in reading.organ.keyboards] == ["C-g3", "C-f1"]
    assert sum("compass" in one.what for one in reading.assumed) == 2


def test_wind_is_kept_as_a_note():
    assert "70 mm" in read_stoplist(LIST + "Winddruck: HW 70 mm, Ped 75 mm").organ.notes


def test_a_question_is_no_note():
    assert [one.line for one in read_stoplist(LIST + "What was the wind in 1897?").unread] == [7]


def test_rows_of_a_spreadsheet_name_their_division():
    organ = read_stoplist("Great;Principal;8\nGreat;Flute;4\n\nSwell;Oboe;8\n").organ

    assert [one.name for one in organ.divisions] == ["Great", "Swell"]


def test_rows_that_name_no_division_are_no_sheet():
    organ = read_stoplist("GREAT\nPrincipal, open, 8\nFlute, open, 4\nOboe, reed, 8\n").organ

    assert [one.name for one in organ.divisions] == ["Great"]
