"""Pure ranks against tempered keys; the figures are worked out, not printed."""

from dataclasses import replace
from fractions import Fraction
from math import log2

import pytest

from instruments.compass import parse_key
from instruments.temperament import find_temperament, frequency
from registrations.roughness import beat, resultant_cents
from tests.builders import an_organ
from tests.reference.tables import replay

C1 = parse_key("c1")
TWELFTH, TIERCE = Fraction(8, 3), Fraction(8, 5)


def in_temperament(name: str, **given):
    return replace(an_organ(), temperament=name, **given)


@pytest.mark.parametrize(
    ("length", "pure", "key", "beats"),
    [(TWELFTH, 784.877, 783.991, -0.886), (TIERCE, 1308.128, 1318.510, 10.382)],
)
def test_a_pure_rank_beats_with_the_equal_key(length, pure, key, beats):
    assert frequency(C1, length) == pytest.approx(pure, abs=0.0006)
    assert beat(an_organ(), length, C1) == pytest.approx(beats, abs=0.0006)
    assert pure + beats == pytest.approx(key, abs=0.0011)


@replay("temperament tierce quint", "pure_ranks.txt")
def test_a_pure_rank_lies_off_the_key_by_what_the_temperament_takes(temperament, tierce, quint):
    organ = in_temperament(temperament)
    for length, cents in ((TIERCE, tierce), (TWELFTH, quint)):
        pure = frequency(C1, length, temperament=find_temperament(temperament))
        key = pure + beat(organ, length, C1)

        assert 1200 * log2(pure / key) == pytest.approx(float(cents), abs=0.0011)


@pytest.mark.parametrize("name", ["Kirnberger III", "quarter-comma meantone"])
def test_where_the_third_is_pure_a_tierce_does_not_beat(name):
    assert beat(in_temperament(name), TIERCE, C1) == pytest.approx(0, abs=1e-6)


def test_an_octave_never_beats():
    assert beat(in_temperament("Vallotti"), Fraction(4), C1) == pytest.approx(0, abs=1e-9)


def test_beats_double_with_each_octave_and_follow_the_pitch():
    organ, higher = an_organ(), in_temperament("equal", pitch_hz=880)

    assert beat(organ, TIERCE, C1 + 12) == pytest.approx(2 * beat(organ, TIERCE, C1))
    assert beat(higher, TIERCE, C1) == pytest.approx(2 * beat(organ, TIERCE, C1))


def test_a_temperament_that_nobody_knows_beats_as_equal():
    assert beat(in_temperament("ours"), TIERCE, C1) == beat(an_organ(), TIERCE, C1)


def test_sixteen_and_a_pure_ten_and_two_thirds_give_thirty_two():
    sixteen, quint = frequency(0, Fraction(16)), frequency(0, Fraction(32, 3))

    assert (sixteen, quint) == pytest.approx((32.703, 49.055), abs=0.0006)
    assert resultant_cents(sixteen, quint, frequency(0, Fraction(32))) == pytest.approx(0)


def test_sixteen_with_the_tempered_fifth_falls_short_of_it():
    sixteen, fifth = frequency(0, Fraction(16)), frequency(7, Fraction(16))

    assert fifth == pytest.approx(48.999, abs=0.0006)
    assert fifth - sixteen == pytest.approx(16.296, abs=0.0006)
    assert resultant_cents(sixteen, fifth, frequency(0, Fraction(32))) == pytest.approx(
        -5.87, abs=0.006
    )
