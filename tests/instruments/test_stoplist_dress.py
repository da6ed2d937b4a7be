"""Lengths, ranks, compasses and headings in the dress of many printers."""

import pytest

from instruments.compass import Compass, parse_compass
from instruments.organ import Half
from instruments.pitch import parse_length
from instruments.stoplist import read_stoplist


def reading(text):
    return read_stoplist(text)


def stop(line, heading="Hauptwerk"):
    return list(reading(f"{heading}\n{line}").organ.stops())[-1][1]


@pytest.mark.parametrize(
    ("written", "length"),
    [
        ("Quinte 2 2/3'", "2 2/3"),
        ("Quinte 2⅔", "2 2/3"),
        ("Quinte 2-2/3'", "2 2/3"),
        ("Quinte 2.66", "2 2/3"),
        ("Quinte 2,67'", "2 2/3"),
        ("Quinte 2.2/3", "2 2/3"),
        ("Quinte 22/3'", "2 2/3"),
        ("Quinte 2²⁄₃", "2 2/3"),
        ("Quinte 2²/₃'", "2 2/3"),
        ("Quinte 2'2/3", "2 2/3"),
        ("Twelfth 2 feet 8 inches", "2 2/3"),
        ("Quinte 11/3", "1 1/3"),
        ("Terz 13/5'", "1 3/5"),
        ("Quinte 1 1/2'", "1 1/3"),
        ("Quinta 6'", "5 1/3"),
        ("Principal 8 Fuss", "8"),
        ("Montre 8 pieds", "8"),
        ("Prestant 8 voet", "8"),
        ("Principal 8 fot", "8"),
        ("Principal 4 f.", "4"),
        ("Flautado de 13 palmos", "8"),
        ("Flautado de 26 palmos", "16"),
        ("16' Bourdon", "16"),
    ],
)
def test_a_length_is_read_in_every_dress(written, length):
    assert stop(written).length == parse_length(length)


@pytest.mark.parametrize("written", ["Flautado 11 palmos", "Quinte 1/0", "Quinte 9 ft 5 in"])
def test_figures_that_no_pipe_has_are_no_length(written):
    found = [one for _, one in reading(f"GREAT\nOboe 8\n{written}").organ.stops()][1:]

    assert all(one.length in {parse_length("8"), parse_length("2 2/3")} for one in found)


@pytest.mark.parametrize(
    ("written", "ranks"),
    [
        ("Mixtur 4f.", 4),
        ("Mixtur 4 f. 1 1/3'", 4),
        ("Mixtur 4fach 2'", 4),
        ("Mixtur 4-fach", 4),
        ("Mixtur IV 2'", 4),
        ("Mixtur IV-V", 4),
        ("Mixtur 4-5fach", 4),
        ("Fourniture 4 rangs", 4),
        ("Mixtuur 4 sterk", 4),
        ("Ripieno 4 file", 4),
        ("Lleno 4 hileras", 4),
        ("Mixtur 4 kor", 4),
        ("Plein jeu VII", 7),
        ("Cornet 4 f.", 4),
        ("Corneta 6 hileras", 6),
        ("Ripieno XIX-XXII", 2),
        ("Sesquialtera 2 2/3' + 1 3/5'", 2),
        ("Rauschquinte 2f. 2 2/3", 2),
        ("Mixture (3 ranks: 15, 19, 22)", 3),
    ],
)
def test_ranks_are_read_in_every_dress(written, ranks):
    found = stop(written)

    assert found.ranks == ranks
    assert len(found.composition[0].lengths) == ranks


def test_ranks_beyond_all_customs_keep_their_number():
    assert stop("Mixtur 24fach").ranks == 24


@pytest.mark.parametrize(
    ("name", "length"),
    [
        ("Vigesima II", "1"),
        ("Decima V", "2"),
        ("XXVI", "2/3"),
        ("Flauto in VIII", "4"),
        ("Flauto in duodecima", "2 2/3"),
    ],
)
def test_italian_counts_are_names(name, length):
    found = stop(name, "Grand'Organo")

    assert (found.name, found.length, found.ranks) == (name, parse_length(length), 1)


@pytest.mark.parametrize(
    ("written", "compass"),
    [
        ("Hauptwerk C–g³", "C-g3"),
        ("Hauptwerk (C-g''')", "C-g3"),
        ("Hauptwerk, C,D-c3", "C,D-c3"),
        ("Hauptwerk CDEFGA-c³", "C,D,E,F,G,A-c3"),
        ("Hauptwerk (56 Tasten)", "C-g3"),
        ("Hauptwerk C bis g3", "C-g3"),
        ("Hauptwerk FF-f3", "FF-f3"),
    ],
)
def test_a_heading_may_tell_a_compass(written, compass):
    (keyboard,) = reading(f"{written}\nPrinzipal 8'").organ.keyboards

    assert keyboard.compass == parse_compass(compass)


def test_a_compass_that_does_not_rise_is_none():
    (keyboard,) = reading("Hauptwerk (g-C)\nPrinzipal 8'").organ.keyboards

    assert keyboard.compass == Compass(0, 55)


@pytest.mark.parametrize(
    ("remark", "low"),
    [("ab c0", 12), ("ab c'", 24), ("do3", 24), ("à partir du 2e ut", 12), ("ab f", 17)],
)
def test_a_stop_may_begin_above_the_bottom(remark, low):
    assert stop(f"Cornet V ({remark})").compass.low == low


@pytest.mark.parametrize("remark", ["from z", "ab C", "wood", "1899"])
def test_other_remarks_leave_the_compass(remark):
    assert stop(f"Gedackt 8' ({remark})").compass is None


@pytest.mark.parametrize(
    ("heading", "name", "pedal"),
    [
        ("I. Manual: Hauptwerk", "Hauptwerk", False),
        ("Rückpositiv (2. Manual)", "Rückpositiv", False),
        ("II", "Manual II", False),
        ("Grand-Orgue", "Grand-Orgue", False),
        ("2e clavier - Récit expressif - 56 notes", "Récit expressif", False),
        ("Pédale", "Pédale", True),
        ("Hoofdwerk", "Hoofdwerk", False),
        ("Organo Espressivo (II)", "Espressivo", False),
        ("Órgano Mayor", "Órgano mayor", False),
        ("HOVEDVÆRK", "Hovedværk", False),
        ("Svällverk", "Svällverk", False),
        ("SWELL (enclosed), 4 stops, 3 inches wind", "Swell", False),
    ],
)
def test_divisions_are_known_in_many_languages(heading, name, pedal):
    organ = reading(f"{heading}\nPrincipal 8'\nGedackt 8'").organ

    assert [one.name for one in organ.divisions] == [name]
    assert (organ.keyboards[0].kind == "pedal") is pedal


def test_halves_may_be_headings_or_letters():
    halves = [one.half for _, one in reading("Bajos\nOctava 4'\nTiples\nClarín 8'").organ.stops()]
    both = [one.half for _, one in reading("Manuaal\nTrompet 8' B/D").organ.stops()]

    assert halves == [Half.BASS, Half.TREBLE]
    assert both == [Half.BASS, Half.TREBLE]


def test_a_page_of_tags_is_read_like_its_text():
    text = "<table><tr><td>GREAT</td></tr>\n<tr><td>Oboe</td><td>8&#8242;</td></tr>\n</table>"
    found = reading(text)

    assert [one.name for _, one in found.organ.stops()] == ["Oboe"]
    assert found.lines[-1].read_as == "marks of a page"


def test_pitch_wind_and_builder_are_notes():
    organ = reading(
        "An organ\nGREAT\nOboe 8\nErbaut 1911 von W. Muster\nWinddruck 85 mm\na1 = 435 Hz"
    ).organ

    assert organ.pitch_hz == 435
    assert organ.notes.splitlines() == ["Erbaut 1911 von W. Muster", "Winddruck 85 mm"]


def test_contras_are_of_the_pedals_wherever_they_stand():
    organ = reading("Órgano\nFlautado 8'\nContras 16'").organ

    assert [one.name for _, one in organ.stops()] == ["Flautado", "Contras"]
    assert [one.keyboard for one in organ.divisions][-1] == "pedal"


@pytest.mark.parametrize(
    ("line", "division"),
    [
        ("Tremulant", "swell"),
        ("Tremulant to Great", "great"),
        ("Swell Tremulant (light)", "swell"),
    ],
)
def test_a_tremulant_belongs_to_a_division(line, division):
    organ = reading(f"GREAT\nOboe 8\nSWELL\nOboe 8\nPEDAL\nBourdon 16\n{line}").organ

    assert [one.id for one in organ.divisions if one.tremulants] == [division]


@pytest.mark.parametrize("line", ["Zimbelstern", "Nightingale", "General cancel", "Kalkant"])
def test_devices_are_accessories(line):
    assert reading(f"GREAT\nOboe 8\n{line}").organ.accessories == (line,)
