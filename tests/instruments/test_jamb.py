from dataclasses import replace

import pytest

from instruments.consoles import Console, Panel, Piston, PistonKind, Place, Touch
from instruments.jamb import knobs, panels, piston_words, unplaced, usual_places
from instruments.references import loose_ends
from tests.builders import an_organ


def placed(*places: Place):
    return replace(an_organ(), console=Console(places=frozenset(places)))


def test_every_control_has_a_face():
    organ = an_organ(great=["Principal 8"], tremulants=("great",), couplers=["Great to Great 4"])

    faces = [(knob.figure, knob.name, knob.home) for knob in knobs(organ)]

    assert faces == [
        ("8′", "Principal", "Great"),
        ("", "Tremulant", "Great"),
        ("", "Great to Great 4", "Couplers"),
    ]


def test_a_face_is_named_in_a_sentence():
    assert knobs(an_organ())[1].label == "Principal 4′ (Great)"


def test_without_places_there_is_no_map():
    assert panels(an_organ()) == ()


def test_a_map_has_rows_and_columns_with_gaps():
    organ = placed(
        Place("great/principal-4", Panel.RIGHT, 1, 1),
        Place("great/trumpet-8", Panel.RIGHT, 2, 2),
    )

    (right,) = panels(organ)

    assert right.words == "right jamb"
    assert [[knob and knob.name for knob in row] for row in right.rows] == [
        ["Principal", None],
        [None, "Trumpet"],
    ]


def test_a_place_of_a_control_that_is_gone_is_left_out():
    assert panels(placed(Place("gone", Panel.LEFT, 1, 1))) == ()


def test_a_map_to_be_filled_has_every_panel_and_room_to_spare():
    maps = panels(placed(Place("great/principal-4", Panel.LEFT, 1, 1)), spare=1)

    assert [one.panel for one in maps] == list(Panel)
    assert [len(one.rows) for one in maps] == [2, 1, 1, 1]


def test_what_has_no_place_yet_is_known():
    organ = placed(Place("great/principal-4", Panel.RIGHT, 1, 1))

    assert len(unplaced(organ)) == len(organ.control_ids()) - 1


def test_the_usual_order_gives_every_control_a_place_of_its_own():
    organ = an_organ(great=[f"Flute{n} 8" for n in range(20)], pedal=["Bourdon 16"])

    organ = replace(organ, console=Console(places=usual_places(organ)))

    assert unplaced(organ) == ()
    assert list(loose_ends(organ)) == []


def test_in_the_usual_order_the_pedal_is_left_the_great_right_and_couplers_on_the_rail():
    where = {one.control: one.panel for one in usual_places(an_organ())}

    assert where["pedal/bourdon-16"] is Panel.LEFT
    assert where["swell/oboe-8"] is Panel.LEFT
    assert where["great/principal-4"] is Panel.RIGHT
    assert where["swell-to-great"] is Panel.RAIL


@pytest.mark.parametrize(
    ("piston", "words"),
    [
        (Piston("1", "General 1"), "everything, by thumb"),
        (
            Piston("1", "Great 1", PistonKind.DIVISIONAL, division="great", touch=Touch.BOTH),
            "the Great, by thumb and toe",
        ),
        (
            Piston("1", "R", PistonKind.REVERSIBLE, control="great-to-pedal", touch=Touch.TOE),
            "Great to Pedal (Couplers) in and out, by toe",
        ),
    ],
)
def test_a_piston_says_what_it_moves(piston, words):
    assert piston_words(an_organ(), piston) == words
