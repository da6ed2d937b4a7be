from fractions import Fraction
from xml.etree import ElementTree

from instruments.compass import parse_compass
from instruments.pitch import parse_length
from registrations.compasschart import Stretch, compass_charts, compass_svg
from tests.builders import a_combination, a_stop, an_organ

TREBLE = a_stop("Cornet 8", compass=parse_compass("c1-c4"))


def chart(*drawn, organ=None, **hands):
    hands = hands or {"right": "great"}
    (found,) = compass_charts(organ or an_organ(), a_combination(*drawn, **hands))
    return found


def drawn(picture, kind):
    root = ElementTree.fromstring(compass_svg(picture))
    return [one for one in root.iter() if one.get("class") == kind]


def texts(picture, kind):
    return [one.text for one in drawn(picture, kind)]


def test_one_stop_over_all_the_keys_is_one_bar():
    found = chart("great/open-diapason-8")

    assert found.stretches == (Stretch(0, 60, (Fraction(8),)),)
    assert len(drawn(found, "full")) == 1
    assert drawn(found, "begins") == drawn(found, "bare") == drawn(found, "hollow") == []


def test_nothing_drawn_has_no_chart():
    assert compass_charts(an_organ(), a_combination()) == ()


def test_a_keyboard_that_is_silent_is_bare_from_end_to_end():
    found = chart("swell/oboe-8")

    assert found.words == "C to c4: nothing of a pitch sounds."
    assert texts(found, "word") == ["bare"]


def test_stops_of_one_pitch_over_the_same_keys_are_one_bar():
    found = chart("great/open-diapason-8", "great/trumpet-8")

    assert found.words == "C to c4: 8′."


def test_a_mutation_is_hollow():
    found = chart("great/open-diapason-8", "great/twelfth-2-2-3")

    assert (len(drawn(found, "full")), len(drawn(found, "hollow"))) == (1, 1)
    assert found.words == "C to c4: 8′ and 2⅔′."


def test_keys_without_pipes_are_framed_and_told():
    found = chart("great/cornet-8", organ=an_organ(great=[TREBLE]))

    assert found.words == "C to b: nothing of a pitch sounds; c1 to c4: 8′."
    assert len(drawn(found, "bare")) == 1
    assert texts(found, "at")[-1] == "c1"


def test_a_pitch_that_stops_and_sounds_again_has_two_bars():
    bass = a_stop("Bass 4", compass=parse_compass("C-B"))
    top = a_stop("Top 4", compass=parse_compass("c3-c4"))
    organ = an_organ(great=["Principal 8", bass, top])
    runs = list(chart(*(stop.id for _, stop in organ.stops()), organ=organ).runs())

    four = (Fraction(4),)
    assert [one for one in runs if one.lengths == four] == [
        Stretch(0, 11, four),
        Stretch(48, 60, four),
    ]


def test_where_a_coupler_runs_out_another_stretch_begins():
    found = chart("great/open-diapason-8", "swell/flute-4", "swell-to-great-4")

    assert found.words == "C to c3: 8′ and 2′; c♯3 to c4: 8′."
    assert len(drawn(found, "begins")) == 1


def test_names_of_keys_keep_apart():
    begins = (("8", "c1"), ("4", "c#1"), ("2", "d1"), ("1", "g1"))
    halves = [a_stop(f"Half {feet}", compass=parse_compass(f"{key}-c4")) for feet, key in begins]
    organ = an_organ(great=halves)
    found = chart(*(stop.id for _, stop in organ.stops()), organ=organ)

    assert len(drawn(found, "begins")) == 4
    assert texts(found, "at")[-2:] == ["c1", "g1"]


def test_higher_pitches_stand_higher_and_every_pitch_is_named():
    found = chart("great/open-diapason-8", "great/twelfth-2-2-3", "great/principal-4")

    (twelfth,) = drawn(found, "hollow")
    four, eight = sorted(float(one.get("y")) for one in drawn(found, "full"))
    assert float(twelfth.get("y")) < four < eight
    assert {"8′", "4′", "2⅔′"} <= set(texts(found, "feet"))


def test_a_single_key_is_named_once():
    assert Stretch(24, 24, (parse_length("8"),)).keys == "c1"
