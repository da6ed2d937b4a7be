"""How lists are laid out: columns, runs, cells and lost headings, before a stop is read."""

import pytest

from instruments.stoplist.layout import layout

MOST = 500


def laid(text: str) -> list[str]:
    return [piece.text for piece in layout(list(enumerate(text.splitlines(), 1)), MOST)]


PLAIN = "St Mary\n\nGREAT\nDiapason 8\nHarmonic Flute 4\nMixture III\n\nCouplers\nSwell to Great"


@pytest.mark.parametrize(
    "text",
    [
        PLAIN,
        "The organ was built in 1890 by a firm of our own invention, and has two manuals.",
        "GREAT\nOpen Diapason 8 (from Swell) 61 pipes\nBourdon 16 wood",
        "PEDAL\nOpen Wood 16\nOpen Diapason No. 1 8 ft",
        "CHOIR\nKoppel Flute 4\nNason Flute 4",
        "SWELL\nSwell to Swell 16, UO, 4\nSwell to Great Sub",
        "Stop    Pitch    Pipes",
    ],
)
def test_a_plain_list_stays_as_it_is(text):
    assert laid(text) == [line for line in text.splitlines() if line.strip()]


def test_columns_kept_apart_by_spaces_come_one_after_another():
    text = "GREAT            SWELL\nPrincipal   4    Oboe      8\nTrumpet     8    Celeste   8"

    assert laid(text) == ["GREAT", "Principal 4", "Trumpet 8", "SWELL", "Oboe 8", "Celeste 8"]


def test_a_stop_alone_in_its_row_goes_to_the_column_it_stands_in():
    text = "GREAT          SWELL\nPrincipal 4    Oboe 8\n               Celeste 8\nFlute 4"

    assert laid(text) == ["GREAT", "Principal 4", "Flute 4", "SWELL", "Oboe 8", "Celeste 8"]


def test_a_heading_alone_ends_the_columns():
    text = "GREAT            SWELL\nFlute 4          Oboe 8\nPEDAL\nBourdon 16       Bass Flute 8"

    assert laid(text)[-3:] == ["PEDAL", "Bourdon 16", "Bass Flute 8"]


def test_two_columns_of_one_division_are_read_down_one_after_the_other():
    text = "GREAT\nPrincipal 4      Trumpet 8\nFlute 4          Clarion 4"

    assert laid(text) == ["GREAT", "Principal 4", "Flute 4", "Trumpet 8", "Clarion 4"]


def test_leaders_of_dots_part_no_columns():
    text = "GREAT               SWELL\nPrincipal .... 4    Oboe .... 8"

    assert laid(text) == ["GREAT", "Principal 4", "SWELL", "Oboe 8"]


def test_figures_first_stay_with_the_names_behind_them():
    text = "GREAT\tSWELL\n8'\tDiapason\t61\t4'\tOctave\t61"

    assert laid(text) == ["GREAT", "8' Diapason 61", "SWELL", "4' Octave 61"]


def test_rows_whose_spaces_are_lost_are_dealt_to_their_columns():
    text = (
        "GREAT SWELL PEDAL\nDiapason 8 Gedackt 8 Bourdon 16\nOctave 4 Gemshorn 4\nTrumpet 8 Oboe 8"
    )

    assert laid(text) == [
        *("GREAT", "Diapason 8", "Octave 4", "Trumpet 8"),
        *("SWELL", "Gedackt 8", "Gemshorn 4", "Oboe 8", "PEDAL", "Bourdon 16"),
    ]


def test_a_guessed_column_is_said():
    text = "GREAT PEDAL\nDiapason 8 Bourdon 16\nOctave 4"

    pieces = layout(list(enumerate(text.splitlines(), 1)), MOST)
    assert [piece.doubt for piece in pieces if piece.text == "Octave 4"] == [
        "“Octave 4”: its column is lost; it is taken to go on as GREAT."
    ]


def test_a_page_of_columns_copied_as_one_line_is_dealt_out():
    text = (
        "Specification Great Organ Pedal Organ Diapason 8 Bourdon 16 Octave 4 Bass Flute 8 "
        "Fifteenth 2 Mixture III Great to Pedal"
    )

    assert laid(text) == [
        *("Specification", "Great Organ", "Diapason 8", "Octave 4", "Fifteenth 2", "Mixture III"),
        *("Pedal Organ", "Bourdon 16", "Bass Flute 8", "Great to Pedal"),
    ]


def test_a_run_is_cut_behind_its_figures_and_at_its_headings():
    text = "GREAT Diapason 8 Octave 4 SWELL Oboe 8 (enclosed) Tremulant PEDAL Bourdon 16"

    assert laid(text) == [
        *("GREAT", "Diapason 8", "Octave 4", "SWELL", "Oboe 8 (enclosed)", "Tremulant"),
        *("PEDAL", "Bourdon 16"),
    ]


def test_a_run_of_couplers_is_cut_into_couplers():
    text = "Oboe 8 Trumpet 8 Horn 8 Couplers Swell to Great Great to Pedal Swell to Pedal"

    assert laid(text)[3:] == ["Couplers", "Swell to Great", "Great to Pedal", "Swell to Pedal"]


@pytest.mark.parametrize(
    "text",
    [
        "Great Organ.—Diapason, 8 ft.; Octave, 4 ft.; Mixture, 3 ranks.",
        "Great Organ: Diapason, 8 ft.; Octave, 4 ft.; Mixture, 3 ranks",
    ],
)
def test_a_paragraph_is_cut_at_its_semicolons(text):
    assert laid(text) == ["Great Organ", "Diapason, 8 ft", "Octave, 4 ft", "Mixture, 3 ranks"]


def test_commas_bullets_and_an_and_part_stops():
    assert laid("GREAT: Diapason 8, Octave 4 and Fifteenth 2")[1:3] == ["Diapason 8", "Octave 4"]
    assert laid("GREAT: 8 Diapason • 4 Octave") == ["GREAT", "8 Diapason", "4 Octave"]
    assert laid("GREAT: Diapason 8, Octave 4, and Oboe 8")[-1] == "Oboe 8"


def test_couplers_behind_their_heading_stay_in_one_piece():
    text = "Koppeln: II/I, I/P, II/P. Tremulant"

    assert laid(text) == ["Koppeln: II/I, I/P, II/P", "Tremulant"]


def test_numbers_that_count_the_stops_part_a_run():
    text = "1 Open Diapason 8 2 Principal 4 3 Trumpet 8"

    assert laid(text) == ["1 Open Diapason 8", "2 Principal 4", "3 Trumpet 8"]


def test_a_list_too_long_is_not_laid_out_to_its_end():
    lines = [(number, "Oboe 8") for number in range(1, 60)]

    assert len(layout(lines, 20)) == 21
