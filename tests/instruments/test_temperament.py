from fractions import Fraction

import pytest

from instruments.temperament import (
    EQUAL,
    KIRNBERGER_III,
    MEANTONE,
    PURE_FIFTH,
    PURE_THIRD,
    TEMPERAMENTS,
    WERCKMEISTER_III,
    find_temperament,
    frequency,
)


@pytest.mark.parametrize("temperament", TEMPERAMENTS)
def test_keys_rise_from_c_to_c(temperament):
    cents = [temperament.cents(key) for key in range(13)]

    assert cents == sorted(cents)
    assert (cents[0], cents[12]) == (0, 1200)


@pytest.mark.parametrize("temperament", TEMPERAMENTS)
def test_twelve_fifths_come_back_to_where_they_began(temperament):
    fifths = [temperament.cents(key + 7) - temperament.cents(key) for key in range(12)]

    assert sum(fifths) == pytest.approx(7 * 1200)


def test_in_meantone_eight_thirds_are_pure_and_one_fifth_howls():
    thirds = [MEANTONE.cents(key + 4) - MEANTONE.cents(key) for key in range(12)]
    wolf = MEANTONE.cents(15) - MEANTONE.cents(8)

    assert sum(third == pytest.approx(PURE_THIRD) for third in thirds) == 8
    assert wolf - PURE_FIFTH == pytest.approx(35.682, abs=0.001)


@pytest.mark.parametrize("temperament", [EQUAL, WERCKMEISTER_III, KIRNBERGER_III])
def test_a_pitch_standard_names_a1_in_every_temperament(temperament):
    assert frequency(33, pitch_hz=415, temperament=temperament) == 415


def test_a_mutation_is_tuned_pure_to_its_key():
    twelfth = frequency(24, Fraction(8, 3))

    assert twelfth == pytest.approx(3 * frequency(24))
    assert frequency(43) - twelfth == pytest.approx(-0.886, abs=0.001)


@pytest.mark.parametrize("name", ["Werckmeister III", "werckmeister  iii", " WERCKMEISTER III "])
def test_a_temperament_is_found_however_it_is_written(name):
    assert find_temperament(name) is WERCKMEISTER_III


def test_an_unknown_temperament_is_not_found():
    assert find_temperament("Werckmeister") is None
    assert find_temperament("") is None
