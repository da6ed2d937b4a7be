"""What is guessed when a list is laid out: figures on lines of their own, lost headings."""

import pytest

from instruments.stoplist.layout import layout
from instruments.stoplist.layout.continuity import dealt, follows_well

NO_HEADINGS = "Diapason 8\nOctave 4\n\nGedackt 8\nOboe 8\n\nBourdon 16\nBass Flute 8"


def laid(text: str) -> list[str]:
    return [piece.text for piece in layout(list(enumerate(text.splitlines(), 1)), 500)]


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("GREAT\nOboe\n8'\nFlute\n4'\nScharf\nIII", ["GREAT", "Oboe 8'", "Flute 4'", "Scharf III"]),
        ("GREAT\n8'\nOboe\n4'\nFlute\nIII\nScharf", ["GREAT", "8' Oboe", "4' Flute", "III Scharf"]),
        ("GREAT\nOboe\nFlute\nMixture\n8\n4\nIII", ["GREAT", "Oboe 8", "Flute 4", "Mixture III"]),
        ("1\nOboe\n8'\n2\nFlute\n4'\n3\nViola\n8'", ["1. Oboe 8'", "2. Flute 4'", "3. Viola 8'"]),
        ("GREAT\nOboe\n8'\n61\nFlute\n4'\n61", ["GREAT", "Oboe 8' 61", "Flute 4' 61"]),
        ("GREAT\nOboe\n8'\nTremulant\n\nFlute\n4'\nPEDAL\n16'\nBourdon",
         ["GREAT", "Oboe 8'", "Tremulant", "Flute 4'", "PEDAL", "16' Bourdon"]),
    ],
)  # fmt: skip
def test_figures_alone_go_to_the_names_they_belong_to(text, pieces):
    assert laid(text) == pieces


def test_a_single_figure_alone_goes_to_the_last_of_several_names():
    text = "GREAT\nOboe\nFlute\n4'\nViola\n8'\nGamba\n8'"

    assert laid(text) == ["GREAT", "Oboe", "Flute 4'", "Viola 8'", "Gamba 8'"]


def test_figures_without_any_name_stay():
    text = "GREAT\nOboe 8\n16\n8\n4\nPEDAL\nBourdon 16"

    assert laid(text) == ["GREAT", "Oboe 8", "16", "8", "4", "PEDAL", "Bourdon 16"]


def test_few_figures_alone_are_left_where_they_are():
    assert laid("GREAT\nOboe 8\n12\nFlute 4\nViola 8") == [
        "GREAT",
        "Oboe 8",
        "12",
        "Flute 4",
        "Viola 8",
    ]


@pytest.mark.parametrize(
    ("couplers", "headings"),
    [
        ("", ["Manual I", "Manual II", "Pedal"]),
        ("\n\nSwell to Great\nGreat to Pedal", ["Great", "Swell", "Pedal"]),
        ("\n\nII/I\nI/P\nII/P", ["Manual I", "Manual II", "Pedal"]),
    ],
)
def test_lost_headings_are_named_as_the_couplers_name_them(couplers, headings):
    pieces = layout(list(enumerate((NO_HEADINGS + couplers).splitlines(), 1)), 500)

    assert [piece.text for piece in pieces if piece.doubt] == headings


def test_a_list_without_gaps_begins_anew_behind_its_reeds_and_tremulants():
    text = "Diapason 8\nTrumpet 8\nGedackt 8\nViola 8\nTremulant\nBourdon 16\nPrincipal 16\nFlute 4"

    headings = [one for one in laid(text) if one.startswith(("Manual", "Pedal"))]
    assert headings == ["Manual I", "Manual II", "Pedal"]


def test_headings_that_are_there_are_kept_and_the_first_is_found():
    text = "Diapason 8\nOctave 4\nFifteenth 2\nPEDAL\nBourdon 16\nBass Flute 8"

    assert laid(text)[:2] == ["Manual", "Diapason 8"]


@pytest.mark.parametrize(
    "text", ["Oboe 8\nFlute 4", "bass\nOboe 8\nFlute 4\ntreble\nOboe 8\nFlute 4"]
)
def test_no_heading_is_guessed_for_little_or_for_halves(text):
    assert laid(text) == text.splitlines()


def test_chorus_order_tells_how_well_a_stop_follows():
    assert follows_well("Principal 4", "Fifteenth 2", pedal=False) > 0
    assert follows_well("Fifteenth 2", "Bourdon 16", pedal=False) < 0
    assert follows_well("Oboe 8", "Principal 4", pedal=False) < 0
    assert follows_well("Open Wood 16", "Bourdon 16", pedal=True) > 1
    assert follows_well("Bourdon 16", "Fifteenth 2", pedal=True) <= 0


def test_two_stops_for_three_columns_cannot_be_dealt():
    assert dealt(["Oboe 8", "Flute 4"], [False, False, True]) == [0, 0]
