import pytest

from instruments import pitch
from tests.reference.tables import replay


@replay("harmonic feet ordinal cents key deviation name", "harmonic_series.txt")
def test_a_length_stands_where_the_series_has_it(
    harmonic, feet, ordinal, cents, key, deviation, name
):
    length = pitch.parse_length(feet)

    assert pitch.harmonic(length) == int(harmonic)
    assert pitch.cents(length) == pytest.approx(float(cents), abs=0.0006)
    assert pitch.semitones(length) == int(key)
    assert pitch.deviation(length) == pytest.approx(float(deviation), abs=0.0006)
    assert str(pitch.ordinal(length) or "-") == ordinal
    assert pitch.interval_name(length) == name


@replay("feet harmonic of cents deviation ordinal", "lower_series.txt")
def test_a_length_of_a_lower_series_stands_where_it_is_heard(
    feet, harmonic, of, cents, deviation, ordinal
):
    length = pitch.parse_length(feet)

    assert pitch.harmonic(length, unison=int(of)) == int(harmonic)
    assert pitch.cents(length) == pytest.approx(float(cents), abs=0.0006)
    assert pitch.deviation(length) == pytest.approx(float(deviation), abs=0.0006)
    assert str(pitch.ordinal(length) or "-") == ordinal
