"""Couplers in the dress of many lists."""

import pytest

from instruments.stoplist import read_stoplist

ENGLISH = "GREAT\nOboe 8\nSWELL\nOboe 8\nCHOIR\nFlute 8\nPEDAL\nBourdon 16\nCouplers\n"
GERMAN = (
    "I. Hauptwerk\nPrinzipal 8'\nII. Oberwerk\nGedackt 8'\nIII. Schwellwerk\nGambe 8'\n"
    "Pedal\nSubbass 16'\n"
)
DUTCH = "Hoofdwerk\nPrestant 8'\nBovenwerk\nHolpijp 8'\nPedaal\nSubbas 16'\nKoppelingen\n"
FRENCH = "Grand-Orgue\nMontre 8\nRécit\nGambe 8\nPédale\nSoubasse 16\n"


def couplers(head, line):
    organ = read_stoplist(head + line).organ
    return [
        (one.source, one.target, "off" if one.unison_off else one.octave) for one in organ.couplers
    ]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Swell to Great", [("swell", "great", 8)]),
        ("Sw/Gt 16 8 4", [("swell", "great", octave) for octave in (16, 8, 4)]),
        ("Sw to Gt 16, 8, 4", [("swell", "great", octave) for octave in (16, 8, 4)]),
        ("Swell to Great sub octave", [("swell", "great", 16)]),
        ("Swell Octave to Great", [("swell", "great", 4)]),
        ("Swell octave", [("swell", "swell", 4)]),
        ("Sw 16 UO 4", [("swell", "swell", 16), ("swell", "swell", 4), ("swell", "swell", "off")]),
        ("Great Unison Off", [("great", "great", "off")]),
        ("Gt & Ped", [("great", "pedal", 8)]),
        ("Sub Octave", [("swell", "swell", 16)]),
        ("Swell to Great, Choir to Great", [("swell", "great", 8), ("choir", "great", 8)]),
        ("Swell to Great Choir to Great", [("swell", "great", 8), ("choir", "great", 8)]),
        ("ii. Swell to Pedal", [("swell", "pedal", 8)]),
        ("Great to Great", []),
    ],
)
def test_english_couplers(line, expected):
    assert couplers(ENGLISH, line) == expected


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Koppeln: II/I, I/P", [("oberwerk", "hauptwerk", 8), ("hauptwerk", "pedal", 8)]),
        ("Koppel II-I", [("oberwerk", "hauptwerk", 8)]),
        ("Super III/I", [("schwellwerk", "hauptwerk", 4)]),
        ("Suboktavkoppeln: III/I, III/II", [
            ("schwellwerk", "hauptwerk", 16), ("schwellwerk", "oberwerk", 16)]),
        ("SW an HW 4'", [("schwellwerk", "hauptwerk", 4)]),
        ("Pedalkoppel II", [("oberwerk", "pedal", 8)]),
        ("Manualkoppel", [("oberwerk", "hauptwerk", 8)]),
        ("Koppeln: P-I, P-II, I-II", [
            ("hauptwerk", "pedal", 8), ("oberwerk", "pedal", 8), ("oberwerk", "hauptwerk", 8)]),
        ("P/I", [("hauptwerk", "pedal", 8)]),
    ],
)  # fmt: skip
def test_german_couplers(line, expected):
    assert couplers(GERMAN, line) == expected


def test_normal_couplers_are_every_manual_to_the_first_and_to_the_pedals():
    assert couplers(GERMAN, "Normalkoppeln") == [
        ("oberwerk", "hauptwerk", 8),
        ("schwellwerk", "hauptwerk", 8),
        ("hauptwerk", "pedal", 8),
        ("oberwerk", "pedal", 8),
        ("schwellwerk", "pedal", 8),
    ]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("HW-BW", [("bovenwerk", "hoofdwerk", 8)]),
        ("HW - BW, Ped - HW", [("bovenwerk", "hoofdwerk", 8), ("hoofdwerk", "pedaal", 8)]),
        ("Bovenwerk aan Hoofdwerk", [("bovenwerk", "hoofdwerk", 8)]),
        ("Pedaalkoppel", [("hoofdwerk", "pedaal", 8)]),
    ],
)
def test_dutch_couplers(line, expected):
    assert couplers(DUTCH, line) == expected


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Tirasses G.O. et Réc.", [("grand-orgue", "pedale", 8), ("recit", "pedale", 8)]),
        ("Tirasse", [("grand-orgue", "pedale", 8)]),
        ("Tirasse Pédale", [("grand-orgue", "pedale", 8)]),
        ("Accouplement Réc./G.O.", [("recit", "grand-orgue", 8)]),
        ("Copula Récit sur G.O.", [("recit", "grand-orgue", 8)]),
        ("Octaves graves Récit", [("recit", "recit", 16)]),
    ],
)
def test_french_couplers(line, expected):
    assert couplers(FRENCH, line) == expected


@pytest.mark.parametrize("line", ["Solo to Great", "Swell to Solo"])
def test_a_coupler_of_a_division_that_is_not_there_is_left_unread(line):
    reading = read_stoplist(ENGLISH + line)

    assert reading.organ.couplers == ()
    assert [one.text for one in reading.unread] == [line]


def test_pedals_without_stops_are_there_when_something_is_coupled_to_them():
    organ = read_stoplist("Manuaal\nPrestant 8'\nPedaalkoppel").organ

    assert [one.name for one in organ.keyboards] == ["Manuaal", "Pedal"]
    assert [(one.source, one.target) for one in organ.couplers] == [("manuaal", "pedal")]


def test_one_manual_alone_couples_with_nothing_but_may_have_an_octave():
    text = "Manual\nPrinzipal 8'\nKoppeln\n"

    assert couplers(text, "Superoktavkoppel") == [("manual", "manual", 4)]
    assert couplers(text, "Manualkoppel") == []


@pytest.mark.parametrize("line", ["Octave 4", "Super Octave 2", "Bombarde 16", "Koppelflöte 4"])
def test_a_stop_is_no_coupler(line):
    organ = read_stoplist(f"GREAT\nOboe 8\n{line}").organ

    assert organ.couplers == ()
    assert len(organ.division("great").stops) == 2
