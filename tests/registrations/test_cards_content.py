from dataclasses import replace

import pytest

from instruments.consoles import Console
from instruments.organ import Coupler, Half
from registrations.cards.content import (
    CODE_ALPHABET,
    COUPLERS,
    GONE,
    Control,
    Group,
    SheetKind,
    divisions_in_order,
    item_sheet,
    service_sheets,
    sheet_code,
    stop_control,
)
from registrations.registration import Change, Registration
from services.order import Piece
from tests.builders import a_combination, a_stop, an_organ
from tests.registrations.sheets import a_registration, a_service, a_sheet, an_item


def test_a_card_says_what_when_where_and_who():
    sheet = a_sheet(("great/principal-4",))

    assert (sheet.title, sheet.credit) == (
        "Love divine, all loves excelling",
        "Love Divine · 8.7.8.7 · John Stainer",
    )
    assert (sheet.key, sheet.verses, sheet.number) == ("A♭", 4, 1)
    assert sheet.day == "Sunday 29 November 2026, 9:05"
    assert (sheet.service, sheet.church) == ("Advent Sunday", "St Osyth")
    assert (sheet.player, sheet.instrument) == ("Ida Marsh", "An organ")


def test_an_item_that_is_not_in_the_service_has_no_number():
    assert item_sheet(a_service(), an_item(), None).number == 0


def test_an_item_without_a_registration_has_no_changes_and_no_instrument():
    sheet = item_sheet(a_service(), an_item(), None)

    assert (sheet.blocks, sheet.instrument) == ((), "")


def test_a_service_gives_its_order_and_then_a_card_for_each_item():
    items = an_item(7), an_item(9, piece=Piece("Toccata"), player="")
    order, hymn, toccata = service_sheets(a_service(*items), {7: a_registration(())})

    assert order.kind is SheetKind.ORDER
    assert [(line.number, line.title) for line in order.lines] == [
        (1, "Love divine, all loves excelling"),
        (2, "Toccata"),
    ]
    assert [line.instrument for line in order.lines] == ["An organ", ""]
    assert (len(hymn.blocks), len(toccata.blocks)) == (1, 0)


def test_manuals_come_first_then_floating_divisions_then_pedals():
    organ = an_organ(
        pedal=["Bourdon 16"], great=["Octave 4"], solo=["Tuba 8"], swell=[], floating=["solo"]
    )

    ordered = [division.name for division in divisions_in_order(organ)]
    assert ordered == ["Great", "Swell", "Solo", "Pedal"]


def test_what_is_drawn_stands_by_division_with_couplers_last():
    drawn = ("great/twelfth-2-2-3", "great-to-pedal", "pedal/bourdon-16", "great/open-diapason-8")
    (block,) = a_sheet(drawn).blocks

    assert block.drawn == (
        Group("Great", (Control("8′", "Open Diapason"), Control("2⅔′", "Twelfth"))),
        Group("Pedal", (Control("16′", "Bourdon"),)),
        Group(COUPLERS, (Control("", "Great to Pedal"),)),
    )


def test_a_tremulant_stands_with_its_division():
    organ = an_organ(swell=["Oboe 8"], tremulants=["swell"])
    (block,) = a_sheet(("swell/tremulant", "swell/oboe-8"), organ=organ).blocks

    assert block.drawn == (Group("Swell", (Control("8′", "Oboe"), Control("", "Tremulant"))),)


def test_what_the_organ_no_longer_has_is_still_named():
    (block,) = a_sheet(("great/vanished-8",), right="choir").blocks

    assert block.drawn == (Group(GONE, (Control("", "great/vanished-8"),)),)
    assert block.hands == (("Right hand", "choir (no longer on this organ)"),)


def test_the_first_change_has_no_moves():
    block = a_sheet(("great/principal-4",)).blocks[0]

    assert (block.add, block.put_in) == ((), ())


def test_a_later_change_says_what_to_draw_and_put_in():
    second = a_sheet(
        ("great/principal-4", "great/fifteenth-2"), ("great/principal-4", "swell/oboe-8")
    ).blocks[1]

    assert second.add == (Group("Swell", (Control("8′", "Oboe"),)),)
    assert second.put_in == (Group("Great", (Control("2′", "Fifteenth"),)),)


@pytest.mark.parametrize(
    ("hands", "said"),
    [
        ({}, ()),
        ({"right": "great", "left": "great"}, (("Both hands", "Great"),)),
        (
            {"right": "swell", "left": "great", "feet": "pedal"},
            (("Right hand", "Swell"), ("Left hand", "Great"), ("Feet", "Pedal")),
        ),
        ({"left": "great"}, (("Left hand", "Great"),)),
        ({"feet": "pedal"}, (("Feet", "Pedal"),)),
    ],
)
def test_hands_and_feet_are_said_in_words(hands, said):
    assert a_sheet((), **hands).blocks[0].hands == said


@pytest.mark.parametrize(
    ("stop", "control"),
    [
        (a_stop("Principal 8"), Control("8′", "Principal")),
        (a_stop("Terz 1 3/5"), Control("1⅗′", "Terz")),
        (a_stop("Septième 1 1/7"), Control("1⅐′", "Septième")),
        (a_stop("Mixture 15.19.22"), Control("III", "Mixture")),
        (a_stop("Mixture IV", length=None, ranks=4), Control("IV", "Mixture")),
        (a_stop("Cornet 8", ranks=5), Control("V 8′", "Cornet")),
        (a_stop("Zimbelstern"), Control("", "Zimbelstern")),
        (a_stop("Hautbois 8", half=Half.TREBLE), Control("8′", "Hautbois (treble)")),
        (a_stop("Trumpet Bass 8", half=Half.BASS), Control("8′", "Trumpet Bass")),
    ],
)
def test_a_stop_has_its_pitch_or_ranks_before_its_name(stop, control):
    assert stop_control(stop) == control


@pytest.mark.parametrize(
    ("name", "octave", "figure"),
    [("Swell to Great", 8, ""), ("Swell to Great 4", 4, ""), ("Swell to Great", 16, "16′")],
)
def test_a_coupler_says_its_octave_once(name, octave, figure):
    organ = replace(an_organ(), couplers=(Coupler("c", name, "swell", "great", octave),))

    (block,) = a_sheet(("c",), organ=organ).blocks
    assert block.drawn[0].controls == (Control(figure, name),)


def test_notes_come_along_as_one_line():
    change = Change("Verse\n2", a_combination(), note="Box\tshut.  Slowly.")
    item = an_item(note="Play\nover")
    sheet = item_sheet(a_service(item), item, Registration(an_organ(), (change,)))

    assert (sheet.blocks[0].cue, sheet.blocks[0].note) == ("Verse 2", "Box shut. Slowly.")
    assert sheet.note == "Play over"


def test_a_sheet_code_is_six_signs_that_cannot_be_misread():
    code = sheet_code(a_sheet(("great/principal-4",)))

    assert len(code) == 6
    assert set(code) <= set(CODE_ALPHABET)
    assert set(CODE_ALPHABET).isdisjoint("ILOU")


def test_the_same_content_has_the_same_code():
    assert sheet_code(a_sheet(("swell/oboe-8",))) == sheet_code(a_sheet(("swell/oboe-8",)))


@pytest.mark.parametrize(
    "other",
    [
        a_sheet(("swell/flute-4",)),
        a_sheet(("swell/oboe-8",), cue="Verse 2"),
        a_sheet(("swell/oboe-8",), right="swell"),
        a_sheet(("swell/oboe-8",), item=an_item(player="Jo Reeve")),
        a_sheet(("swell/oboe-8",), ("swell/oboe-8",)),
    ],
)
def test_another_content_has_another_code(other):
    assert sheet_code(other) != sheet_code(a_sheet(("swell/oboe-8",)))


def test_the_upper_manual_stands_first_where_the_console_says_which_it_is():
    organ = an_organ(great=["Principal 8"], swell=["Oboe 8"], pedal=["Bourdon 16"])
    said = replace(organ, console=Console(keyboards=("swell", "great", "pedal")))

    assert [one.name for one in divisions_in_order(organ)] == ["Great", "Swell", "Pedal"]
    assert [one.name for one in divisions_in_order(said)] == ["Swell", "Great", "Pedal"]
