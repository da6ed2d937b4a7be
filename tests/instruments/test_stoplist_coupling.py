"""Pieces that couple keyboards, in the place where they stand in a list."""

import pytest

from instruments.stoplist import read_stoplist
from instruments.stoplist.couplerline import read_couplers

ENGLISH = "GREAT\nPrincipal 8\nSWELL\nGedackt 8\nCHOIR\nDulciana 8\nPEDAL\nBourdon 16\n"
GERMAN = "I. Hauptwerk\nPrinzipal 8\nII. Schwellwerk\nGedackt 8\nPedal\nSubbass 16\n"


def couplers(organ: str, lines: str) -> list[str]:
    return [one.name for one in read_stoplist(organ + "\n" + lines).organ.couplers]


@pytest.mark.parametrize(
    ("lines", "names"),
    [
        ("Sw/Gt 16 8 4", ["Swell to Great 16", "Swell to Great", "Swell to Great 4"]),
        ("Swell unison off", ["Swell unison off"]),
        ("Couplers: Ch/Gt, Sw/Ch", ["Choir to Great", "Swell to Choir"]),
        ("Couplers\nSw 16, UO, 4", ["Swell sub-octave", "Swell octave", "Swell unison off"]),
        ("Swell to Swell 16, UO, 4", ["Swell sub-octave", "Swell octave", "Swell unison off"]),
        ("ix. Swell to Choir", ["Swell to Choir"]),
        ("Swell to Great\nSw/Gt", ["Swell to Great"]),
    ],
)
def test_short_forms_and_lists(lines, names):
    assert sorted(couplers(ENGLISH, lines)) == sorted(names)


@pytest.mark.parametrize(
    ("lines", "name"),
    [
        ("Superoktavkoppel II/I", "Schwellwerk to Hauptwerk 4"),
        ("Suboktavkoppeln: II/I", "Schwellwerk to Hauptwerk 16"),
        ("Pedalkoppel II", "Schwellwerk to Pedal"),
        ("Manualkoppel", "Schwellwerk to Hauptwerk"),
        ("Pedalkoppel", "Hauptwerk to Pedal"),
    ],
)
def test_couplers_in_one_german_word(lines, name):
    assert couplers(GERMAN, lines) == [name]


def test_octaves_among_figured_stops_are_couplers():
    text = "SWELL\nGedackt 8\nGemshorn 4\nOboe 8\nTremulant\nOctave\nUnison Off\n"

    assert couplers("", text) == ["Swell octave", "Swell unison off"]


def test_an_octave_with_a_figure_stays_a_stop():
    organ = read_stoplist("GREAT\nGedackt 8\nGemshorn 4\nOboe 8\nOctave 4").organ

    assert organ.couplers == ()
    assert [stop.name for _, stop in organ.stops()][-1] == "Octave"


@pytest.mark.parametrize("line", ["Solo to Great", "Great to Great"])
def test_a_coupler_that_couples_nothing_here_is_unread(line):
    reading = read_stoplist(ENGLISH + "\n" + line)

    assert [one.text for one in reading.unread] == [line]
    assert reading.organ.couplers == ()


@pytest.mark.parametrize("line", ["Pedalkoppel", "Octaves graves", "Manualkoppel"])
def test_pedals_alone_couple_with_nothing(line):
    reading = read_stoplist(f"PEDAL\nSubbass 16\nFlöte 8\nKoppeln\n{line}")

    assert reading.organ.couplers == ()
    assert [one.text for one in reading.unread] == [line]


def test_a_pedal_coupler_makes_pedals_where_there_are_none():
    reading = read_stoplist("MANUAL\nPrincipal 8\nFlute 4\n\nPedal coupler")

    assert [one.id for one in reading.organ.keyboards] == ["manual", "pedal"]


@pytest.mark.parametrize(
    "text", ["Flute 4", "a fine organ", "Swell", "x" * 200, "Great 7", "8", "Swell to octave"]
)
def test_other_words_are_no_couplers(text):
    assert read_couplers(text) == ()


def test_two_pairs_behind_one_word_are_two_couplers():
    names = couplers(GERMAN, "Koppeln und Spielhilfen\nSchiebekoppeln II/I und I/P")

    assert names == ["Schwellwerk to Hauptwerk", "Hauptwerk to Pedal"]


@pytest.mark.parametrize("line", ["Three composition pedals to Great", "Six pistons to Swell"])
def test_pedals_and_pistons_of_a_division_are_accessories(line):
    organ = read_stoplist(ENGLISH + "\n" + line).organ

    assert organ.accessories == (line,)
    assert organ.couplers == ()
