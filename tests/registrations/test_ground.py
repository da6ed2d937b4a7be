from fractions import Fraction

import pytest

from instruments.mixtures import Zone
from registrations.checks.findings import Level
from registrations.combination import Hands
from registrations.ground import drawn_at, grounds_of, place_of, weight
from tests.builders import a_stop, an_organ
from tests.registrations.guides import CHAMBER, ORGANS, PARISH, TOWN, names


def needs(organ, stop):
    return names(grounds_of(organ)[stop].needs)


@pytest.mark.parametrize("stop", ["great/open-diapason-8", "great/trumpet-8"])
def test_a_stop_of_the_unison_stands_alone(stop):
    assert needs(PARISH, stop) == []


def test_a_compound_stop_with_its_own_unison_stands_alone():
    cornet = a_stop("Cornet", "flute", composition=(Zone(0, (Fraction(8), Fraction(4))),))

    assert needs(an_organ(great=[cornet, "Gedackt 8"]), "great/cornet") == []


def test_one_that_begins_at_middle_c_needs_a_stop_for_the_bass():
    assert needs(TOWN, "positive/cornet") == ["Gedackt"]


def test_a_stop_without_a_pitch_stands_alone():
    assert needs(TOWN, "positive/cymbelstern") == []


def test_a_twelfth_needs_8_and_4_of_its_own_tone():
    assert needs(PARISH, "great/twelfth-2-2-3") == ["Open Diapason", "Principal"]
    assert needs(PARISH, "swell/nazard-2-2-3") == ["Stopped Diapason", "Flute"]


def test_a_mixture_needs_the_chorus_under_it():
    assert needs(PARISH, "great/mixture-19-22-26") == ["Open Diapason", "Principal", "Fifteenth"]
    assert needs(TOWN, "great/mixtur-15-19-22") == ["Prinzipal", "Octave"]


def test_what_cannot_stand_alone_is_set_on_the_unison():
    organ = an_organ(great=["Octave 4", "Twelfth 2 2/3", "Gedackt 8 (flute stopped)"])

    assert needs(organ, "great/twelfth-2-2-3") == ["Gedackt", "Octave"]


def test_an_octave_needs_its_unison():
    assert needs(PARISH, "swell/flute-4") == ["Stopped Diapason"]


def test_a_high_pedal_stop_needs_a_16_and_an_8():
    assert needs(TOWN, "pedal/choralbass-4") == ["Subbass", "Violon"]


def test_a_stop_that_beats_is_no_ground_while_another_is_there():
    organ = an_organ(
        great=["Celeste 8 (flute undulating)", "Gedackt 8 (flute stopped)", "Tierce 4/5 (flute)"]
    )

    assert "Celeste" not in needs(organ, "great/tierce-4-5")


def test_where_nothing_makes_the_checks_quiet_the_least_that_is_said_is_kept():
    zimbel = grounds_of(CHAMBER)["great/zimbel-22-26"]

    assert names(zimbel.needs) == ["Gedackt", "Flute"]
    assert {one.level for one in zimbel.still} == {Level.ADVICE}


def test_where_nothing_helps_at_all_nothing_is_added():
    organ = an_organ(great=["Twelfth 2 2/3"])
    ground = grounds_of(organ)["great/twelfth-2-2-3"]

    assert ground.needs == ()
    assert [one.rule for one in ground.still] == ["mutation-alone"]


def test_a_ground_is_as_small_as_can_be():
    for organ in ORGANS:
        assert all(len(ground.needs) <= 3 for ground in grounds_of(organ).values())


def test_a_division_is_played_at_home():
    place = place_of(PARISH, PARISH.division("pedal"))

    assert (place.keyboard.id, place.coupler) == ("pedal", None)
    assert place.hands == Hands(feet="pedal")


def test_a_floating_division_is_played_from_the_first_keyboard_that_takes_it_at_its_pitch():
    place = place_of(TOWN, TOWN.division("solo"))

    assert (place.keyboard.id, place.coupler.id) == ("great", "solo-to-great")


def test_a_division_that_no_keyboard_takes_is_played_nowhere():
    assert place_of(TOWN, TOWN.division("echo")) is None


def test_without_a_place_there_are_no_hands():
    assert drawn_at(None, [a_stop("Oboe 8")]).hands == Hands()


def test_nothing_said_weighs_nothing():
    assert weight(()) == (0, 0)
