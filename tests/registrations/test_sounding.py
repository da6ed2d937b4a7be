from fractions import Fraction

import pytest

from instruments.compass import Compass
from instruments.mixtures import Zone
from instruments.organ import Half
from instruments.pipework import Pipe
from registrations.sounding import (
    Reach,
    Span,
    heard,
    lengths_on,
    pipes_at,
    reaches,
    rows_opened,
    sounds,
    spans,
)
from tests.builders import a_combination, a_stop, an_organ


def numbers(organ, keyboard, key, *drawn):
    return sorted(one.number for one in pipes_at(organ, a_combination(*drawn), keyboard, key))


def ends(organ, keyboard, *drawn):
    """Give (lowest key, highest key, lengths) of each span."""
    return [
        (span.low, span.high, [str(part.length) for part in span.parts])
        for span in spans(organ, a_combination(*drawn), keyboard)
    ]


def two_manuals(*couplers, **organ):
    return an_organ(
        couplers=couplers, great=["Principal 8"], swell=["Oboe 4"], pedal=["Bourdon 16"], **organ
    )


def test_nothing_drawn_is_silent_from_end_to_end():
    organ = an_organ()

    assert spans(organ, a_combination(), "great") == (Span(0, 60, ()),)
    assert not sounds(organ, a_combination(), "great")


def test_ids_that_the_organ_has_not_got_sound_nothing():
    assert reaches(an_organ(), a_combination("great/regal-8")) == ()


def test_a_stop_sounds_at_its_length_over_the_whole_keyboard():
    assert ends(an_organ(), "great", "great/twelfth-2-2-3") == [(0, 60, ["8/3"])]


def test_a_key_that_the_keyboard_has_not_got_speaks_nothing():
    organ = an_organ(great=["Principal 8"], compass="C,D-c3")

    assert numbers(organ, "great", 1, "great/principal-8") == []
    assert numbers(organ, "great", 2, "great/principal-8") == [3]


def test_the_keys_around_a_missing_one_are_two_reaches():
    organ = an_organ(great=["Principal 8"], compass="C,D,E-c3")
    found = reaches(organ, a_combination("great/principal-8"))

    assert [(one.low, one.high) for one in found] == [(0, 0), (2, 2), (4, 48)]


def test_two_missing_keys_side_by_side_leave_no_reach_between_them():
    organ = an_organ(great=["Principal 8"], compass="C,Eb-c3")
    found = reaches(organ, a_combination("great/principal-8"))

    assert [(one.low, one.high) for one in found] == [(0, 0), (3, 48)]


def test_a_stop_whose_last_keys_are_missing_ends_before_them():
    bass = a_stop(compass=Compass(0, 3, frozenset({3, 9})))
    found = reaches(an_organ(great=[bass]), a_combination("great/principal-8"))

    assert [(one.low, one.high) for one in found] == [(0, 2)]


def test_a_tenor_c_stop_leaves_the_bottom_octave_bare():
    organ = an_organ(swell=[a_stop("Celeste 8", "string", compass=Compass(12, 60))])

    assert ends(organ, "swell", "swell/celeste-8") == [(0, 11, []), (12, 60, ["8"])]
    assert numbers(organ, "swell", 12, "swell/celeste-8") == [1]


def test_two_halves_make_a_whole():
    halves = [a_stop("Bass 8", half=Half.BASS), a_stop("Treble 8", half=Half.TREBLE)]
    found = ends(an_organ(great=halves), "great", "great/bass-8", "great/treble-8")

    assert found == [(0, 23, ["8"]), (24, 60, ["8"])]


def test_a_mixture_is_read_at_the_key_of_its_chest():
    zones = (Zone(0, (Fraction(1),)), Zone(24, (Fraction(2),)))
    organ = an_organ(great=[a_stop("Mixture", composition=zones)], couplers=["Great to Great 4"])

    found = ends(organ, "great", "great/mixture", "great-to-great-4")

    assert found[:2] == [(0, 11, ["1", "1/2"]), (12, 23, ["1", "1"])]


def test_a_break_that_changes_nothing_is_no_new_span():
    zones = (Zone(0, (Fraction(1),)), Zone(24, (Fraction(1),)))
    organ = an_organ(great=[a_stop("Mixture", composition=zones)])

    assert ends(organ, "great", "great/mixture") == [(0, 60, ["1"])]


def test_a_break_above_the_stops_compass_is_never_reached():
    zones = (Zone(0, (Fraction(1),)), Zone(48, (Fraction(2),)))
    mixture = a_stop("Mixture", composition=zones, compass=Compass(0, 40))

    found = ends(an_organ(great=[mixture]), "great", "great/mixture")

    assert found == [(0, 40, ["1"]), (41, 60, [])]


def test_a_rank_doubled_in_a_mixture_is_one_length_and_two_pipes():
    zones = (Zone(0, (Fraction(1), Fraction(1))),)
    organ = an_organ(great=[a_stop("Mixture", composition=zones, ranks=2)])

    assert ends(organ, "great", "great/mixture") == [(0, 60, ["1"])]
    assert len(pipes_at(organ, a_combination("great/mixture"), "great", 0)) == 2


def test_a_drum_sounds_but_has_no_length():
    organ = an_organ(great=[a_stop("Drum", "percussion")])

    assert sounds(organ, a_combination("great/drum"), "great")
    assert lengths_on(organ, a_combination("great/drum"), "great") == ()


def test_lengths_come_longest_first_over_the_whole_compass():
    combination = a_combination("great/fifteenth-2", "great/mixture-19-22-26")

    assert lengths_on(an_organ(), combination, "great") == (
        Fraction(2),
        Fraction(4, 3),
        Fraction(1),
        Fraction(2, 3),
    )


@pytest.mark.parametrize(("shift", "length"), [(0, 8), (12, 4), (24, 2), (-12, 16), (-24, 32)])
def test_an_octave_up_halves_the_length_that_is_heard(shift, length):
    assert heard(Fraction(8), shift) == length


# Worked cases: common practice, no source, but where a source is named.


def test_c1_a_coupler_moves_the_same_key_the_octave_above_or_the_one_below():
    # E. J. Hopkins, “Coupler”, Grove's Dictionary, 1st ed.
    for figure, number in (("", 25), (" 4", 37), (" 16", 13)):
        organ = two_manuals(f"Swell to Great{figure}")
        (coupler,) = organ.couplers

        assert numbers(organ, "great", 24, "swell/oboe-4", coupler.id) == [number]


def test_c2_a_pedal_coupler_brings_the_lower_keys_of_the_manual_under_the_feet():
    # E. J. Hopkins, as above: two and a half octaves; 30 keys of pedal are keys 1 to 30.
    organ = two_manuals("Great to Pedal", pedal_compass="C-f1")
    found = ends(organ, "pedal", "great/principal-8", "great-to-pedal")

    assert found == [(0, 29, ["8"])]


def test_c4_unison_off_alone_is_silence():
    organ = two_manuals("Swell Unison Off")

    assert not sounds(organ, a_combination("swell/oboe-4", "swell-unison-off"), "swell")


def test_c4_unison_off_with_the_sub_octave_makes_an_oboe_4_sound_8():
    organ = two_manuals("Swell Unison Off", "Swell to Swell 16")
    drawn = ("swell/oboe-4", "swell-unison-off", "swell-to-swell-16")

    assert lengths_on(organ, a_combination(*drawn), "swell") == (Fraction(8),)


def test_c5_an_octave_coupler_runs_out_of_pipes_in_the_top_octave():
    organ = two_manuals("Swell to Swell 4", "Swell Unison Off")
    found = ends(organ, "swell", "swell/oboe-4", "swell-to-swell-4", "swell-unison-off")

    assert found == [(0, 48, ["2"]), (49, 60, [])]


def test_c6_a_chest_of_73_keeps_the_octave_coupler_sounding_to_the_top_and_not_the_sub_octave():
    oboe = a_stop("Oboe 8", "reed", compass=Compass(0, 72))
    organ = an_organ(swell=[oboe], couplers=["Swell to Swell 4", "Swell to Swell 16"])

    assert numbers(organ, "swell", 60, "swell/oboe-8", "swell-to-swell-4") == [61, 73]
    assert numbers(organ, "swell", 0, "swell/oboe-8", "swell-to-swell-16") == [1]


def test_c7_swell_to_great_makes_the_great_sound_the_swell_and_not_the_reverse():
    organ = two_manuals("Swell to Great")

    assert sounds(organ, a_combination("swell/oboe-4", "swell-to-great"), "great")
    assert not sounds(organ, a_combination("great/principal-8", "swell-to-great"), "swell")


def test_c11_couplers_do_not_add_up_on_an_electric_action():
    organ = two_manuals("Swell to Great", "Great to Pedal")
    drawn = ("swell/oboe-4", "swell-to-great", "great-to-pedal")

    assert not sounds(organ, a_combination(*drawn), "pedal")


def test_c12_a_pipe_reached_by_two_couplers_speaks_once():
    organ = two_manuals("Swell to Great", "Swell to Great 4")
    drawn = a_combination("swell/oboe-4", "swell-to-great", "swell-to-great-4")

    both_keys = pipes_at(organ, drawn, "great", 24) | pipes_at(organ, drawn, "great", 12)

    assert sorted(pipe.number for pipe in both_keys) == [13, 25, 37]


def test_c13_16_8_and_4_from_one_rank_are_85_pipes():
    unit = [a_stop(f"Flute {feet}", "flute", rank="flute") for feet in (16, 8, 4)]
    organ = an_organ(great=unit)
    drawn = a_combination("great/flute-16", "great/flute-8", "great/flute-4")

    pipes = {pipe for key in range(61) for pipe in pipes_at(organ, drawn, "great", key)}

    assert pipes == {Pipe("flute", number) for number in range(1, 86)}


def test_c13_a_stop_borrowed_at_its_own_pitch_adds_no_pipe():
    loan = a_stop("Echo Bass 16", borrowed_from="pedal/bourdon-16")
    organ = an_organ(pedal=["Bourdon 16", loan])

    drawn = ("pedal/bourdon-16", "pedal/echo-bass-16")

    assert numbers(organ, "pedal", 0, *drawn) == [1]


def test_c14_a_coupler_leaves_the_pitch_of_the_keyboards_own_stops():
    organ = two_manuals("Swell to Great 16")
    drawn = a_combination("great/principal-8", "swell-to-great-16")

    assert lengths_on(organ, drawn, "great") == (Fraction(8),)


def test_c16_octave_couplers_multiply_the_notes_of_a_chord_by_three():
    organ = two_manuals("Swell to Great", "Swell to Great 4", "Swell to Great 16")
    drawn = a_combination("swell/oboe-4", *(one.id for one in organ.couplers))

    chord = [pipes_at(organ, drawn, "great", key) for key in (24, 28, 31)]

    assert len(frozenset().union(*chord)) == 9


def test_a_floating_division_sounds_only_through_a_coupler():
    organ = an_organ(
        great=["Principal 8"], solo=["Tuba 8"], floating=["solo"], couplers=["Solo to Great"]
    )

    assert reaches(organ, a_combination("solo/tuba-8")) == ()
    assert sounds(organ, a_combination("solo/tuba-8", "solo-to-great"), "great")


@pytest.mark.parametrize(
    ("stop", "rows"),
    [
        (a_stop("Principal 8"), (("own#1", 12),)),
        (a_stop("Octave 4"), (("own#1", 24),)),
        (a_stop("Celeste 8", "string undulating", ranks=2), (("own#1", 12), ("own#2", 12))),
        (a_stop("Mixture 15.19.22"), (("own#", 12),)),
        (a_stop("Chimes", "percussion"), (("own#1", 12),)),
    ],
)
def test_an_octave_coupler_opens_the_rows_of_a_stop_an_octave_up(stop, rows):
    reach = Reach("great", "swell", stop, 12, ("octave",), 0, 48)

    assert rows_opened(reach, {stop.id: "own"}) == rows
