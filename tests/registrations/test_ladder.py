from fractions import Fraction

from instruments.compass import parse_compass
from instruments.pitch import parse_length
from registrations.ladder import ladder_of, rows
from registrations.standout import BLENDS_BELOW_DB, stand_out
from tests.builders import a_combination, a_stop, an_organ

CHORUS = ("great/open-diapason-8", "great/principal-4", "great/fifteenth-2")
DIAPASON, TWELFTH = "great/open-diapason-8", "great/twelfth-2-2-3"


def lengths(texts):
    return tuple(map(parse_length, texts))


def on_the_great(*drawn, organ=None, **hands):
    hands = hands or {"right": "great"}
    (found,) = ladder_of(organ or an_organ(), a_combination(*drawn, **hands))
    return found


def test_a_chorus_is_whole_and_nothing_of_it_stands_out():
    found = on_the_great(*CHORUS, TWELFTH)

    assert [part.length for part in found.parts] == list(lengths(["8", "4", "2 2/3", "2"]))
    assert found.gaps == ()
    assert found.standing == ()


def test_one_stop_by_itself_lacks_nothing_and_is_the_note_itself():
    found = on_the_great(TWELFTH)

    assert found.gaps == ()
    assert found.standing == ()


def test_a_combination_of_nothing_has_no_ladder():
    assert ladder_of(an_organ(), a_combination()) == ()
    assert rows(()) == ()


def test_a_keyboard_that_is_played_but_silent_has_an_empty_column():
    found = on_the_great("swell/oboe-8")

    assert (found.key, found.parts, found.gaps) == (24, (), ())
    assert rows((found,)) == ()


def test_a_stop_that_sounds_no_pitch_leaves_no_mark():
    organ = an_organ(great=["Principal 8", a_stop("Drum", length=None)])
    found = on_the_great("great/principal-8", "great/drum", organ=organ)

    assert [row.cells for row in rows((found,))] == [("Principal 8′",)]


def test_an_octave_between_octaves_is_missing():
    found = on_the_great(DIAPASON, "great/fifteenth-2")

    assert found.gaps == (4,)


def test_what_the_check_misses_below_a_mutation_is_missing_in_the_picture():
    organ = an_organ(swell=["Stopped Diapason 8 (flute stopped)", "Tierce 1 3/5 (flute)"])
    found = on_the_great(
        "swell/stopped-diapason-8", "swell/tierce-1-3-5", organ=organ, right="swell"
    )

    assert found.gaps == (4, 2)


def test_a_gap_on_other_keys_is_not_missing_at_this_one():
    treble = a_stop("Tierce 1 3/5", family="flute", compass=parse_compass("c2-c4"))
    organ = an_organ(great=["Principal 8", treble])
    found = on_the_great("great/principal-8", "great/tierce-1-3-5", organ=organ)

    assert found.gaps == ()


def test_a_pitch_that_stands_out_is_told_with_its_decibels():
    organ, drawn = an_organ(), a_combination(DIAPASON, TWELFTH, right="great")
    (found,) = ladder_of(organ, drawn)

    [(length, decibels)] = found.standing
    assert length == Fraction(8, 3)
    assert decibels == stand_out(organ, drawn, "great", 24, TWELFTH) >= BLENDS_BELOW_DB


def test_of_two_ranks_at_a_pitch_the_barer_one_counts():
    organ = an_organ(great=["Flute 8 (flute)", "Nazard 2 2/3 (flute)", "Twelfth 2 2/3"])
    drawn = a_combination(*(stop.id for _, stop in organ.stops()), right="great")
    (found,) = ladder_of(organ, drawn)

    each = [
        stand_out(organ, drawn, "great", 24, f"great/{name}-2-2-3")
        for name in ("nazard", "twelfth")
    ]
    assert found.standing == ((Fraction(8, 3), max(each)),)


def test_middle_c_stands_for_a_keyboard_and_the_nearest_key_that_sounds_where_it_does_not():
    half = a_stop("Cornet 8", compass=parse_compass("f#1-c4"))

    assert on_the_great(DIAPASON).heading == "Great"
    found = on_the_great("great/cornet-8", organ=an_organ(great=[half]))
    assert found.heading == "Great at f♯1"


def test_what_couplers_bring_stands_in_the_column_of_the_keys_played():
    found = on_the_great("swell/flute-4", "swell-to-great-4", DIAPASON)

    assert found.words_at(Fraction(2)) == "Flute 4′, stands out by 11 dB"
    assert found.gaps == (4,)


def test_the_table_says_what_the_picture_shows():
    organ = an_organ()
    drawn = a_combination(DIAPASON, TWELFTH, "pedal/bourdon-16", right="great", feet="pedal")
    found = rows(ladder_of(organ, drawn))

    assert [row.length for row in found] == ["16′", "8′", "4′", "2⅔′"]
    assert [row.cells[1] for row in found] == ["Bourdon 16′", "", "", ""]
    assert found[2].cells[0] == "missing"
    assert found[3].cells[0].startswith("Twelfth 2⅔′, stands out by 1")
    assert found[1].interval == "at the note played"


def test_the_column_of_the_picture_marks_what_is_marked():
    column = on_the_great(DIAPASON, TWELFTH).column

    assert column.label == "Great"
    assert column.gaps == (4,)
    assert column.standing == (Fraction(8, 3),)
