from dataclasses import replace

from registrations.board import Control, Kind, board, labels
from registrations.combination import Combination
from tests.builders import a_combination, an_organ

ORGAN = an_organ(
    great=["Principal 8", "Octave 4"],
    swell=["Principal 8", "Oboe 8 (reed)"],
    couplers=["Swell to Great", "Swell to Great 4", "Swell Unison Off"],
    tremulants=["swell"],
)


def names(group) -> list[str]:
    return [f"{control.figure} {control.name}".strip() for control in group.controls]


def test_nothing_is_drawn_on_an_empty_combination():
    groups = board(ORGAN, Combination())

    assert [group.drawn() for group in groups] == [(), ()]


def test_what_is_drawn_is_shown_where_it_stands():
    great, swell = board(ORGAN, a_combination("great/octave-4", "swell-to-great"))

    assert [control.id for control in great.drawn()] == ["great/octave-4", "swell-to-great"]
    assert swell.drawn() == ()


def test_stops_come_before_the_couplers_of_their_keyboard_and_its_tremulant():
    great, swell = board(ORGAN, Combination())

    assert names(great) == [*("8′ Principal", "4′ Octave", "Swell to Great", "Swell to Great 4")]
    assert names(swell) == ["8′ Principal", "8′ Oboe", "Swell Unison Off", "Tremulant"]


def test_a_coupler_to_a_keyboard_without_a_division_stands_with_the_first():
    keyboard = replace(ORGAN.keyboards[0], id="solo")
    coupler = replace(ORGAN.couplers[0], target="solo")
    organ = replace(ORGAN, keyboards=(*ORGAN.keyboards, keyboard), couplers=(coupler,))

    great, _ = board(organ, Combination())

    assert names(great) == ["8′ Principal", "4′ Octave", "Swell to Great"]


def test_a_division_in_a_box_says_so():
    open_great, swell = ORGAN.divisions
    organ = replace(ORGAN, divisions=(open_great, replace(swell, enclosed=True)))

    assert [group.note for group in board(organ, Combination())] == ["", "in a box"]


def test_a_control_is_named_in_a_sentence_by_its_pitch_if_it_is_a_stop():
    assert Control("x", Kind.STOP, "2⅔′", "Twelfth").label == "Twelfth 2⅔′"
    assert Control("x", Kind.STOP, "", "Chimes").label == "Chimes"
    assert Control("x", Kind.COUPLER, "4′", "Octave").label == "Octave"


def test_names_that_recur_have_their_division_with_them():
    found = labels(ORGAN)

    assert found["swell/principal-8"] == "Principal 8′ (Swell)"
    assert found["swell/tremulant"] == "Tremulant"
    assert set(found) == ORGAN.control_ids()


def test_two_tremulants_are_told_apart():
    found = labels(replace(ORGAN, divisions=an_organ(tremulants=["great", "swell"]).divisions))

    assert found["great/tremulant"] == "Tremulant (Great)"
