"""Against the formula worked out once by hand, and against the package dissonant on PyPI."""

import numpy as np
import pytest
from dissonant import dissonance, harmonic_tone
from hypothesis import given
from hypothesis import strategies as st

from registrations.roughness import ROUNDED, sethares
from registrations.spectrum import spectrum
from tests.builders import a_combination, an_organ
from tests.reference.tables import replay, rows

PARTIALS = np.arange(1, 7)
ORGAN = an_organ()


def interval(semitones: float):
    frequencies = np.outer([261.63, 261.63 * 2 ** (semitones / 12)], PARTIALS).ravel()
    return frequencies, np.tile(0.88 ** (PARTIALS - 1.0), 2)


@replay("semitones value", "sethares_formula.txt")
def test_an_interval_of_six_partials_is_as_rough_as_the_formula_says(semitones, value):
    assert sethares(*interval(int(semitones))) == pytest.approx(float(value), abs=0.00006)


def test_octave_and_unison_fifth_sixth_and_fourth_are_the_least_rough_in_that_order():
    by_roughness = sorted(range(13), key=lambda one: sethares(*interval(one)))

    assert by_roughness[:5] == [12, 0, 7, 9, 5]


@pytest.mark.parametrize("semitones", [5, 7, 9])
def test_a_consonance_is_less_rough_than_its_neighbours(semitones):
    below, here, above = (sethares(*interval(semitones + one)) for one in (-1, 0, 1))

    assert here < min(below, above)


@pytest.mark.parametrize("row", [row for row in rows("sethares_semitones.txt") if row[1] != "-"])
def test_a_semitone_of_two_partials_is_as_rough_as_the_formula_says(row):
    hertz, value, _ = map(float, row)

    assert sethares([hertz, hertz * 2 ** (1 / 12)], [1, 1]) == pytest.approx(value, abs=0.00006)


@replay("hertz semitone roughest", "sethares_semitones.txt")
def test_the_roughest_distance_is_where_the_formula_has_it(hertz, semitone, roughest):
    distances = np.arange(10, 40, 0.01)
    found = [sethares([float(hertz), float(hertz) + one], [1, 1]) for one in distances]

    assert distances[np.argmax(found)] == pytest.approx(float(roughest), abs=0.011)
    assert max(found) == pytest.approx(0.18077, abs=0.000006)


@pytest.mark.parametrize("ratio", [1, 9 / 8, 6 / 5, 5 / 4, 4 / 3, 3 / 2, 2 ** (7 / 12), 5 / 3, 2])
def test_dissonant_agrees_on_its_own_tones(ratio):
    frequencies, amplitudes = harmonic_tone([261.63, 261.63 * ratio], n_partials=6)
    theirs = dissonance(frequencies, amplitudes)

    assert sethares(frequencies.ravel(), amplitudes.ravel()) == pytest.approx(theirs, rel=0.01)


@given(st.lists(st.tuples(st.floats(20, 20_000), st.floats(0.001, 10)), min_size=2, max_size=12))
def test_dissonant_agrees_on_any_partials(partials):
    frequencies, amplitudes = map(np.array, zip(*partials, strict=True))
    theirs = dissonance(frequencies, amplitudes)

    assert sethares(frequencies, amplitudes) == pytest.approx(theirs, rel=0.01)


@pytest.mark.parametrize("keys", [(24, 28, 31), (24, 27, 31), (12, 16, 19, 24)])
def test_dissonant_agrees_on_chords_of_an_organ(keys):
    drawn = a_combination("great/open-diapason-8", "great/principal-4", "great/mixture-19-22-26")
    chord = spectrum(ORGAN, drawn, "great", *keys)
    frequencies, amplitudes = np.array(chord.frequencies), np.sqrt(chord.powers)

    theirs = dissonance(frequencies, amplitudes)

    assert sethares(frequencies, amplitudes) == pytest.approx(theirs, rel=0.01)


def test_rounded_constants_change_little():
    exact, rounded = (sethares(*interval(4), *curve) for curve in ((), (ROUNDED,)))

    assert rounded != exact
    assert rounded == pytest.approx(exact, rel=0.02)
