"""What a teacher says of these registrations is common practice, no source."""

import math
from dataclasses import replace

import pytest

from instruments.organ import Half
from instruments.spectra import MODEL, Tone
from instruments.tone import Family
from registrations.standout import BLENDS_BELOW_DB, FLOOR_DB, stand_out, stand_outs
from tests.builders import a_combination, a_stop, an_organ

C1 = 24


def flutes(*lengths, kind="flute"):
    return [f"Rank{place} {length} ({kind})" for place, length in enumerate(lengths)]


def found(*stops, key=C1, **given):
    organ = an_organ(great=stops)
    return stand_outs(organ, a_combination(*organ.control_ids()), "great", key, **given)


def standing(*stops, **given):
    """The decibels of the rank of highest pitch that is a mutation."""
    mutations = [one for one in found(*stops, **given) if one.length.denominator > 1]
    return mutations[-1].decibels


def test_nothing_drawn_has_nothing_that_stands_out():
    organ = an_organ()

    assert stand_outs(organ, a_combination(), "great", C1) == ()


def test_a_nazard_blends_better_the_more_of_the_series_is_drawn():
    bare, with_octave, with_fifteenth = (
        standing(*flutes("8", "2 2/3")),
        standing(*flutes("8", "4", "2 2/3")),
        standing(*flutes("8", "4", "2 2/3", "2")),
    )

    assert bare > with_octave + 10
    assert with_octave > with_fifteenth + 3


@pytest.mark.parametrize("kind", ["flute", "flute stopped", "flute chimney", "principal", "string"])
def test_a_tierce_on_the_unison_alone_is_worst(kind):
    alone = standing(*flutes("8", "1 3/5", kind=kind))
    better = [("8", "2 2/3"), ("8", "4", "1 3/5"), ("8", "4", "2 2/3"), ("8", "2 2/3", "1 3/5")]

    assert all(standing(*flutes(*one, kind=kind)) < alone for one in better)


@pytest.mark.parametrize("kind", ["flute", "flute stopped", "flute chimney", "principal"])
def test_a_cornet_of_five_ranks_blends(kind):
    ranks = found(*flutes("8", "4", "2 2/3", "2", "1 3/5", kind=kind))

    assert [one.blends for one in ranks] == [False, True, True, True, True]


def test_a_cornet_on_one_knob_blends_as_one_of_five_does():
    single = found("Cornet 1.8.12.15.17 (flute)")
    apart = found(*flutes("8", "4", "2 2/3", "2", "1 3/5"))

    assert [one.decibels for one in single] == pytest.approx([one.decibels for one in apart])


def test_the_mixture_of_a_full_chorus_blends_rank_by_rank():
    ranks = found("Open 8", "Principal 4", "Twelfth 2 2/3", "Fifteenth 2", "Mixture 19.22.26")

    assert all(one.decibels < BLENDS_BELOW_DB / 2 for one in ranks[1:])


def test_a_nazard_on_a_flute_alone_does_not_blend():
    assert standing(*flutes("8", "2 2/3")) > BLENDS_BELOW_DB


def test_a_nazard_blends_sooner_with_strings_than_with_flutes():
    strings = flutes("8", kind="string")

    assert standing(*strings, "Nazard 2 2/3 (flute)") < BLENDS_BELOW_DB
    assert standing(*strings, "Nazard 2 2/3 (flute)") < standing(*flutes("8", "2 2/3"))


def test_a_fifth_that_belongs_to_the_sixteen_foot_series_blends_there():
    with_double = standing(*flutes("16", "8", "5 1/3", "4"))

    assert with_double == pytest.approx(standing(*flutes("8", "4", "2 2/3", "2")))


def test_a_strong_neighbour_is_not_hidden_by_a_weak_one_beside_it():
    double = "Bourdon 16 (flute stopped)"
    cornet = flutes("8", "4", "2 2/3", "2", "1 3/5")

    assert standing(*cornet, double) == pytest.approx(standing(*cornet), abs=0.5)


def test_by_itself_a_rank_rises_above_silence():
    model = replace(MODEL, tones=(((Family.FLUTE, None), Tone((0.0,), 0.0)),))

    assert standing(*flutes("2 2/3"), model=model) == pytest.approx(-FLOOR_DB)


def test_the_arch_is_a_straight_line_between_two_neighbours():
    levels = (0.0, -12.0, -20.0, -24.0)
    model = replace(MODEL, tones=(((Family.FLUTE, None), Tone(levels, 0.0)),))
    between = -12 + (-24 + 12) * math.log2(3 / 2)
    here = 10 * math.log10(1 + 10 ** (-20 / 10))

    assert standing(*flutes("8", "2 2/3"), model=model) == pytest.approx(here - between)


def test_two_equal_nazards_stand_out_by_what_they_are_together():
    one, both = (
        standing(*flutes("8", "2 2/3")),
        standing(*flutes("8", "2 2/3"), "Nazard 2 2/3 (flute)"),
    )

    assert both - one == pytest.approx(3, abs=0.1)


def test_a_tempered_nazard_stands_out_as_a_pure_one():
    unit = [a_stop(f"Unit {one} (flute)", rank="unit") for one in ("8", "2 2/3")]

    assert standing(*unit) == pytest.approx(standing(*flutes("8", "2 2/3")), abs=0.1)


def test_a_stop_stands_out_by_its_barest_rank():
    organ = an_organ(great=["Flute 8 (flute)", "Sesquialtera 12.17 (flute)"])
    drawn = a_combination(*organ.control_ids())
    stop = "great/sesquialtera-12-17"
    ranks = [one for one in stand_outs(organ, drawn, "great", C1) if one.stop == stop]

    assert len(ranks) == 2
    assert stand_out(organ, drawn, "great", C1, stop) == max(one.decibels for one in ranks)


def test_a_stop_that_does_not_sound_does_not_stand_out():
    organ = an_organ()

    assert stand_out(organ, a_combination(), "great", C1, "great/twelfth-2-2-3") is None


def test_a_treble_stop_stands_out_only_where_it_has_pipes():
    organ = an_organ(great=["Flute 8 (flute)", a_stop("Nazard 2 2/3 (flute)", half=Half.TREBLE)])
    drawn, nazard = a_combination(*organ.control_ids()), "great/nazard-2-2-3"

    assert stand_out(organ, drawn, "great", C1 - 1, nazard) is None
    assert stand_out(organ, drawn, "great", C1, nazard) > BLENDS_BELOW_DB
