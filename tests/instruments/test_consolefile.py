from dataclasses import replace

import pytest

from instruments.consolefile import console_from_dict, console_to_dict
from instruments.consoles import UNKNOWN, Console, Panel, Piston, PistonKind, Place, Touch
from instruments.organfile import OrganFileError, organ_from_dict, organ_text, organ_to_dict
from tests.builders import an_organ

CONSOLE = Console(
    keyboards=("swell", "great", "pedal"),
    places=frozenset({Place("great/principal-4", Panel.RIGHT, 1, 2)}),
    pistons=(
        Piston("one", "General 1", touch=Touch.BOTH),
        Piston("two", "Swell 1", PistonKind.DIVISIONAL, division="swell"),
        Piston("three", "Great to Pedal", PistonKind.REVERSIBLE, control="great-to-pedal"),
    ),
    knobs_move=False,
    levels=8,
    sequencer=True,
)


def refusal(**console) -> str:
    data = {**organ_to_dict(an_organ()), "console": console}
    with pytest.raises(OrganFileError) as refused:
        organ_from_dict(data)
    return str(refused.value)


def piston(**facts) -> list[dict]:
    return [{"id": "p", "name": "P", "kind": "general", **facts}]


def place(**facts) -> list[dict]:
    return [{"control": "great/principal-4", "panel": "left", "column": 1, "row": 1, **facts}]


def test_a_console_is_read_as_it_was_written():
    assert console_from_dict(console_to_dict(CONSOLE)) == CONSOLE


def test_what_is_not_known_is_not_written():
    assert console_to_dict(UNKNOWN) == {}
    assert console_from_dict({}) == UNKNOWN


def test_an_organ_without_console_and_notes_writes_neither():
    assert {"console", "notes"}.isdisjoint(organ_to_dict(an_organ()))


def test_console_and_notes_are_in_the_organ_file_and_come_back():
    organ = replace(an_organ(), console=CONSOLE, notes="Wind 3 inches.\nBuilt 1873.")

    again = organ_from_dict(organ_to_dict(organ))

    assert again == organ
    assert organ_text(again) == organ_text(organ)


@pytest.mark.parametrize(
    ("console", "sentence"),
    [
        ({"levels": -1}, "console.levels: -1 is less than the minimum of 0"),
        ({"pistons": piston(kind="cancel")}, "console.pistons[0].kind: 'cancel' is not one of"),
        ({"places": place(row=0)}, "console.places[0].row: 0 is less than the minimum"),
        ({"places": place(control="tuba")}, "console: places names “tuba”, which this organ"),
        ({"keyboards": ["solo"]}, "console: keyboards names “solo”, which this organ does not"),
        ({"keyboards": ["great"] * 2}, "console: keyboards names “great” twice"),
        ({"pistons": piston(division="great")}, "piston p: A general piston moves everything"),
        (
            {"pistons": piston(kind="divisional", division="solo")},
            "piston p: division names “solo”, which this organ does not have.",
        ),
        (
            {"pistons": piston(kind="reversible", control="tuba")},
            "piston p: control names “tuba”, which this organ does not have.",
        ),
        ({"pistons": piston() * 2}, "The piston id “p” is used twice."),
        ({"places": place() + place(row=2)}, "console: places has “great/principal-4” twice."),
        (
            {"places": place() + place(control="great/twelfth-2-2-3")},
            "console: places has 2 controls on the left jamb, column 1, row 1.",
        ),
        ({"colour": "red"}, "console: Additional properties are not allowed"),
    ],
)
def test_a_console_that_cannot_be_is_refused_with_its_place(console, sentence):
    assert refusal(**console).startswith(sentence)


def test_notes_are_refused_with_a_character_that_cannot_be_printed():
    data = {**organ_to_dict(an_organ()), "notes": "Wind\x07"}

    with pytest.raises(OrganFileError, match=r"notes: .+ does not fit"):
        organ_from_dict(data)
