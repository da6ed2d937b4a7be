"""English and American lists, one stop a line."""

import pytest

from instruments.compass import Compass
from instruments.organ import Half, KeyboardKind
from instruments.pitch import parse_length
from instruments.stoplist import read_stoplist
from instruments.tone import Family

LIST = """St Hilda, Marsh End
By the river

Manuals CC to a3, 58 notes
Pedals CCC to f1, 30 notes

GREAT ORGAN (unenclosed)
Open Diapason No. 1  8
Open Diapason II     8
Celeste II           8   (tenor C)
Stopped Diapason     8   61 pipes
Mixture (15.19.22)   3 ranks
Trumpet              8   (prepared for)
SWELL ORGAN
Oboe 8
Tremulant
PEDAL ORGAN
Open Wood 16
Bass Flute 8 (ext. Open Wood)
Oboe 8 (from Swell)

Couplers
Swell to Great
Pedals to Great
Accessories
Six toe pistons
Wind pressure 3 1/2 inches
"""


def stops(text):
    return [stop for _, stop in read_stoplist(text).organ.stops()]


def stop(line, heading="GREAT"):
    return stops(f"{heading}\n{line}")[-1]


def assumed(text):
    return " ".join(one.what for one in read_stoplist(text).assumed)


def test_a_whole_list_is_read_without_a_line_left():
    reading = read_stoplist(LIST)

    assert reading.unread == ()
    assert (reading.organ.name, reading.organ.place) == ("St Hilda, Marsh End", "By the river")
    assert [one.name for one in reading.organ.divisions] == ["Great", "Swell", "Pedal"]
    assert reading.organ.accessories == ("Six toe pistons",)
    assert reading.organ.notes == "Wind pressure 3 1/2 inches"


def test_keyboards_have_the_compass_that_is_written():
    great, _, pedal = read_stoplist(LIST).organ.keyboards

    assert great.compass == Compass(0, 57)
    assert (pedal.kind, pedal.compass) == (KeyboardKind.PEDAL, Compass(0, 29))


def test_a_swell_stands_in_a_box_and_a_great_does_not():
    organ = read_stoplist(LIST).organ

    assert [one.enclosed for one in organ.divisions] == [False, True, False]
    assert [len(one.tremulants) for one in organ.divisions] == [0, 1, 0]


def test_a_coupler_that_names_the_pedals_first_is_turned_and_doubted():
    organ = read_stoplist(LIST).organ

    assert [one.name for one in organ.couplers] == ["Swell to Great", "Great to Pedal"]
    assert "names the pedals first" in assumed(LIST)


@pytest.mark.parametrize(
    ("line", "name", "ranks"),
    [
        ("Open Diapason No. 1 8", "Open Diapason No. 1", 1),
        ("Open Diapason II 8", "Open Diapason II", 1),
        ("Open Wood I 16", "Open Wood I", 1),
        ("Celeste II 8", "Celeste", 2),
        ("IV Mixture", "Mixture", 4),
        ("Sesquialtera II", "Sesquialtera", 2),
        ("Mixture, 5 ranks", "Mixture", 5),
        ("Mixture 3 rks", "Mixture", 3),
    ],
)
def test_a_roman_figure_counts_ranks_or_numbers_the_stop(line, name, ranks):
    found = stop(line)

    assert (found.name, found.ranks) == (name, ranks)


@pytest.mark.parametrize(
    ("line", "length"),
    [
        ("Stopped Diapason 8 61 pipes", "8"),
        ("1\tPrincipal\t4'\t61 pipes", "4"),
        ("8 Open Diapason 61", "8"),
        ("7 Principal 4", "4"),
        ("12. Fifteenth 2", "2"),
        ("Trumpet 8' 7 inches wind", "8"),
        ("8 Trumpet", "8"),
        ("Quint 5 1/2", "5 1/3"),
        ("Twelfth 3", "2 2/3"),
        ("Principal", "4"),
        ("Flute 4 ft.", "4"),
    ],
)
def test_a_length_is_found_among_other_numbers(line, length):
    assert stop(line).length == parse_length(length)


def test_bells_have_no_length_and_their_number_is_none():
    found = stop("Chimes (25 bells)")

    assert (found.length, found.family) == (None, Family.PERCUSSION)


@pytest.mark.parametrize(
    ("line", "half"),
    [
        ("Stopped Diapason 8 (bass)", Half.BASS),
        ("Stopped Diapason 8 (treble)", Half.TREBLE),
        ("Dulciana treble 8", Half.TREBLE),
        ("Sesquialtera bass III", Half.BASS),
        ("Choral Bass 4", None),
    ],
)
def test_a_half_is_told_from_a_name(line, half):
    assert stop(line).half is half


@pytest.mark.parametrize(
    "told", ["tenor C", "TC", "t.c.", "from c", "from tenor C", "c up", "c – g³"]
)
def test_a_celeste_may_begin_at_tenor_c(told):
    assert stop(f"Voix Celeste 8 ({told})").compass == Compass(12, 55)


def test_a_stop_may_have_a_compass_of_its_own():
    assert stop("Cornet V (c1-g3)").compass == Compass(24, 55)


def test_borrowed_and_extended_stops_know_their_lender():
    organ = read_stoplist(LIST).organ
    pedal = organ.division("pedal").stops

    assert [one.borrowed_from for one in pedal] == [None, "pedal/open-wood-16", "swell/oboe-8"]


def test_a_number_in_the_list_may_name_the_lender():
    found = stops("GREAT\n1. Bourdon 16\n2. Oboe 8\nPEDAL\n3. Bourdon 16 (from 1)\n")

    assert found[-1].borrowed_from == found[0].id


def test_a_length_alone_names_the_lender_above():
    found = stops("PEDAL\nTrombone 16\nFlute 8\nTrumpet 8 (from 16')")

    assert found[-1].borrowed_from == found[0].id


@pytest.mark.parametrize("remark", ["from 9", "from Choir", "ext.", "borrowed"])
def test_a_lender_that_is_not_found_is_told(remark):
    text = f"GREAT\n1. Trumpet 8 ({remark})"

    assert stops(text)[0].borrowed_from is None
    assert "Trumpet" in assumed(text)


def test_letters_in_brackets_name_shared_ranks():
    assert [one.rank for one in stops("GREAT\nBourdon 16 [A]\nFlute 4 [A]")] == ["A", "A"]


def test_a_composition_may_break():
    (found,) = stops("GREAT\nMixture III (C 15.19.22; c1 12.15.19)")

    assert [zone.start for zone in found.composition] == [0, 24]
    assert found.ranks == 3


@pytest.mark.parametrize("remark", ["C 15.19.22; C 12.15.19", "C 90.91; c1 92.93"])
def test_a_composition_that_cannot_be_is_assumed_anew(remark):
    assert "composition is not written" in assumed(f"GREAT\nMixture III ({remark})")


def test_a_written_composition_is_no_guess():
    assert "composition" not in assumed("GREAT\nMixture III 17.19.22")


def test_an_unwritten_composition_is_assumed_from_the_lowest_rank():
    text = "GREAT\nMixture III 1"

    assert "22.26.29 from C is usual" in assumed(text)
    assert len(stop("Mixture III 1").composition[0].lengths) == 3


def test_prose_is_not_a_stop_and_is_not_lost():
    reading = read_stoplist("GREAT\nOboe 8\nIs the 8 foot Oboe still there, as it was in our day?")

    assert [one.line for one in reading.unread] == [3]
