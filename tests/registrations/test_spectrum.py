import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.compass import parse_key
from instruments.spectra import MODEL, Tone, partial_powers, tone_of
from instruments.temperament import frequency
from instruments.tone import Family
from registrations.ranks import tuning
from registrations.sounding import pipes_at, reaches
from registrations.spectrum import (
    HIGHEST_HZ,
    compass_spectra,
    extremes,
    level_of,
    loudness,
    spectrum,
)
from tests.builders import a_combination, a_stop, an_organ

C1 = parse_key("c1")
ORGAN = an_organ()
CONTROLS = sorted(ORGAN.control_ids())
OPEN = "great/open-diapason-8"
#: One partial a pipe, all of one strength: a spectrum is then a list of pipes.
PLAIN = replace(MODEL, tones=tuple((kind, Tone((0.0,), 0.0)) for kind, _ in MODEL.tones))


def sound(*drawn, keys=(C1,), organ=ORGAN, keyboard="great", **given):
    return spectrum(organ, a_combination(*drawn), keyboard, *keys, **given)


def test_silence_has_no_partials():
    silence = sound()

    assert (silence.frequencies, silence.powers) == ((), ())
    assert silence.level == -math.inf
    assert silence.brightness == 0


def test_a_key_that_the_keyboard_does_not_have_is_silent():
    assert sound(OPEN, keys=(90,)).powers == ()


def test_no_key_at_all_is_refused():
    with pytest.raises(ValueError, match="empty"):
        sound(OPEN, keys=())


@pytest.mark.parametrize("reckon", [compass_spectra, lambda *given: spectrum(*given, C1)])
def test_a_keyboard_that_the_organ_does_not_have_is_a_mistake(reckon):
    with pytest.raises(KeyError, match="solo"):
        reckon(ORGAN, a_combination(OPEN), "solo")


def test_an_open_diapason_has_its_partials_at_the_harmonics():
    diapason = sound(OPEN)

    assert diapason.frequencies == pytest.approx([frequency(C1) * n for n in range(1, 9)])
    assert diapason.powers == pytest.approx(partial_powers(tone_of(a_stop("Open Diapason 8"))))
    assert diapason.level == pytest.approx(0)


def test_an_octave_joins_the_partials_of_the_unison():
    both = sound(OPEN, "great/principal-4")

    assert len(both.frequencies) == 8 + 4
    assert both.powers[1] == pytest.approx(sound(OPEN).powers[1] + sound(OPEN).powers[0])


@pytest.mark.parametrize(("ranks", "louder"), [(2, 3.0103), (10, 10)])
def test_equal_ranks_add_their_powers(ranks, louder):
    stops = [a_stop(f"Diapason No{one} 8") for one in range(ranks)]
    organ = an_organ(great=stops)

    assert sound(*organ.control_ids(), organ=organ).level == pytest.approx(louder, abs=1e-4)


def test_a_pipe_that_two_keys_reach_speaks_once():
    organ = an_organ(great=["Principal 8"], couplers=["Great to Great 4"])
    octave = sound(*organ.control_ids(), keys=(C1, C1 + 12), organ=organ, model=PLAIN)

    assert octave.powers == pytest.approx([1, 1, 1])


def test_a_pure_tone_of_four_feet_is_twice_as_bright_as_one_of_eight():
    one, other = sound(OPEN, model=PLAIN), sound("great/principal-4", model=PLAIN)

    assert (one.brightness, other.brightness) == pytest.approx((1, 2))


def test_a_trumpet_is_brighter_than_a_diapason_and_a_flute_less_bright():
    flute, diapason, trumpet = (
        sound("swell/flute-4", keyboard="swell").brightness / 2,
        sound(OPEN).brightness,
        sound("great/trumpet-8").brightness,
    )

    assert 1 < flute < diapason < trumpet


def test_what_is_past_hearing_is_left_out():
    top = sound("great/fifteenth-2", keys=(60,))

    assert 0 < len(top.frequencies) < 8
    assert max(top.frequencies) <= HIGHEST_HZ


@given(drawn=st.sets(st.sampled_from(CONTROLS)), key=st.integers(0, 48))
def test_every_pipe_that_speaks_is_counted_once(drawn, key):
    combination = a_combination(*drawn)
    pipes = pipes_at(ORGAN, combination, "great", key)

    found = spectrum(ORGAN, combination, "great", key, model=PLAIN)

    assert found.power == pytest.approx(len(pipes))


@given(drawn=st.sets(st.sampled_from(CONTROLS)), key=st.integers(0, 60))
def test_the_whole_compass_says_at_each_key_what_the_key_says(drawn, key):
    combination = a_combination(*drawn)
    compass = compass_spectra(ORGAN, combination, "great")

    alone = spectrum(ORGAN, combination, "great", key)

    assert compass.at(key).frequencies == alone.frequencies
    assert compass.at(key).powers == pytest.approx(alone.powers)
    assert compass.levels()[key] == pytest.approx(alone.level)
    assert compass.brightness()[key] == pytest.approx(alone.brightness)


def test_a_compass_knows_only_its_keys():
    with pytest.raises(ValueError, match="not in tuple"):
        compass_spectra(ORGAN, a_combination(OPEN), "great").at(90)


def test_partials_that_meet_only_in_one_temperament_are_one_there():
    lengths = ("8", "5 1/3")
    organ = an_organ(great=[a_stop(f"Unit {one}", rank="unit") for one in lengths])
    organ = replace(organ, temperament="Werckmeister III")
    combination = a_combination(*organ.control_ids())
    pure_fifth, narrow_fifth = parse_key("e1"), C1

    compass = compass_spectra(organ, combination, "great")

    assert len(compass.at(narrow_fifth).frequencies) == 16
    assert len(compass.at(pure_fifth).frequencies) == 16 - 2


def test_the_softest_stop_is_nought_and_all_of_them_one():
    between = extremes(ORGAN)
    everything = sound(*CONTROLS)

    assert loudness(sound("pedal/bourdon-16", keyboard="pedal"), between) == pytest.approx(0)
    assert loudness(everything, between) == pytest.approx(1)
    assert 0 < loudness(sound(OPEN), between) < 1


def test_silence_is_as_soft_as_can_be():
    assert loudness(sound(), extremes(ORGAN)) == 0
    assert loudness(sound(OPEN), None) == 0


def test_the_only_stop_is_the_loudest():
    organ = an_organ(great=["Principal 8"])

    assert loudness(sound("great/principal-8", organ=organ), extremes(organ)) == 1


def test_a_compound_stop_counts_with_all_its_ranks():
    organ = an_organ(great=["Mixture 15.19.22"])

    assert extremes(organ).softest == pytest.approx(10 * math.log10(3))


def test_an_organ_of_bells_has_no_softest_sound():
    assert extremes(an_organ(great=["Bells 4 (percussion)"])) is None


def test_a_model_of_an_organs_own_is_heard():
    soft = MODEL.with_tone((Family.PRINCIPAL, None), Tone((0.0,), -6.0))

    assert sound(OPEN, model=soft).level == pytest.approx(-6)


@given(drawn=st.sets(st.sampled_from(CONTROLS)), key=st.integers(0, 24))
def test_the_level_of_a_key_needs_no_partials(drawn, key):
    combination = a_combination(*drawn)
    found = [one for one in reaches(ORGAN, combination) if one.keyboard == "great"]

    level = level_of(found, tuning(ORGAN), key)
    assert level == pytest.approx(spectrum(ORGAN, combination, "great", key).level, abs=0.1)
