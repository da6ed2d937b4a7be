from fractions import Fraction

import pytest

from instruments.compass import Compass
from instruments.mixtures import Zone
from instruments.organ import Half
from instruments.pipework import (
    Pipe,
    composition_of,
    pipework,
    pitches_of,
    ranks,
    stop_compass,
)
from tests.builders import a_division, a_stop, an_organ


def lengths(*feet):
    return tuple(map(Fraction, feet))


def compass_of(stop, **organ):
    division = a_division("Great", [stop])
    return stop_compass(an_organ(great=[stop], **organ), division, division.stops[0])


def test_a_stop_has_the_compass_of_its_home_keyboard():
    assert compass_of(a_stop(), compass="C-g3") == Compass(0, 55)


def test_its_own_compass_is_worth_more_than_the_keyboards():
    extended = a_stop(compass=Compass(0, 72))

    assert compass_of(extended, compass="C-c4") == Compass(0, 72)


@pytest.mark.parametrize(("half", "keys"), [(Half.BASS, (0, 23)), (Half.TREBLE, (24, 60))])
def test_a_divided_stop_is_split_below_middle_c(half, keys):
    assert compass_of(a_stop(half=half)) == Compass(*keys)


def test_a_composition_that_begins_at_middle_c_has_no_pipes_below():
    cornet = a_stop(composition=(Zone(24, lengths(8, 4)),))

    assert compass_of(cornet) == Compass(24, 60)


def test_a_short_octave_is_short_in_its_stops():
    assert compass_of(a_stop(), compass="C,D-c3").missing == {1}


def test_one_rank_has_no_composition():
    assert composition_of(a_stop("Principal 4")) == ()


def test_two_ranks_at_8_are_ranks_of_one_pitch():
    assert composition_of(a_stop("Voix Celeste 8", ranks=2)) == ()


def test_bells_are_no_mixture():
    assert composition_of(a_stop("Zimbelstern", "percussion", ranks=5)) == ()


def test_a_mixture_without_figures_is_taken_for_the_customary_one():
    assert composition_of(a_stop("Mixture", ranks=3)) == (
        Zone(0, (Fraction(2), Fraction(4, 3), Fraction(1))),
    )


def test_a_mixture_with_its_lowest_length_goes_on_in_fifths_and_fourths():
    assert composition_of(a_stop("Mixture 2", ranks=4)) == (
        Zone(0, (Fraction(2), Fraction(4, 3), Fraction(1), Fraction(2, 3))),
    )


def test_a_drum_has_no_pitch():
    assert pitches_of(a_stop("Drum", "percussion")) == ()


def test_a_single_rank_has_its_pitch_at_every_key():
    ((zone),) = pitches_of(a_stop("Twelfth 2 2/3"))

    assert zone.lengths == (Fraction(8, 3),)


def test_a_borrowed_stop_uses_the_lenders_rank_through_every_loan():
    lender = a_stop("Trumpet 8", "reed", rank="trumpet")
    loan = a_stop("Horn 8", "reed", borrowed_from="great/trumpet-8")
    again = a_stop("Tromba 8", "reed", borrowed_from="great/horn-8")

    named = ranks(an_organ(great=[lender, loan, again]))

    assert set(named.values()) == {"trumpet"}


def test_a_loan_from_a_stop_that_is_gone_or_from_itself_is_a_rank_of_its_own():
    gone = a_stop("Horn 8", borrowed_from="swell/horn-8")
    circle = a_stop("Tromba 8", borrowed_from="great/tromba-8")

    named = ranks(an_organ(great=[gone, circle]))

    assert set(named.values()) == {"great/horn-8", "great/tromba-8"}


def test_pipes_are_counted_from_the_lowest_that_any_stop_has_of_the_rank():
    unit = [a_stop("Bourdon 16", rank="bourdon"), a_stop("Bourdon 8", rank="bourdon")]
    organ = an_organ(great=unit)

    pipes = pipework(organ).pipes(organ.divisions[0].stops[1], 0)

    assert list(pipes) == [Pipe("bourdon", 13)]


def test_each_rank_of_a_mixture_is_its_own_from_where_it_begins():
    zones = (Zone(0, lengths(2, 1)), Zone(12, lengths(4, 2, 1)))
    organ = an_organ(great=[a_stop("Mixture", composition=zones, ranks=3)])

    pipes = pipework(organ).pipes(organ.divisions[0].stops[0], 12)

    assert [pipe.number for pipe in pipes] == [13, 13, 1]


def test_a_break_outside_the_stops_compass_counts_for_nothing():
    zones = (Zone(0, lengths(2)), Zone(48, lengths(4, 2)))
    mixture = a_stop("Mixture", composition=zones, ranks=2, compass=Compass(0, 40))

    bottoms = pipework(an_organ(great=[mixture])).bottoms

    assert bottoms == {"great/mixture#1": 0}


def test_two_ranks_of_one_pitch_are_two_pipes_at_a_key():
    organ = an_organ(great=[a_stop("Celeste 8", "string", ranks=2)])

    pipes = pipework(organ).pipes(organ.divisions[0].stops[0], 0)

    assert list(pipes) == [Pipe("great/celeste-8", 1), Pipe("great/celeste-8#2", 1)]


def test_a_stop_without_a_pitch_still_has_something_to_speak():
    organ = an_organ(great=[a_stop("Drum", "percussion")])

    assert list(pipework(organ).pipes(organ.divisions[0].stops[0], 7)) == [Pipe("great/drum", 8)]
