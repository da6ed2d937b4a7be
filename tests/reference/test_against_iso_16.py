import pytest

from instruments.compass import parse_key
from instruments.pitch import parse_length
from instruments.temperament import frequency
from tests.reference.tables import replay


@replay("key feet hertz", "iso_16.txt")
def test_a_key_sounds_at_the_frequency_of_the_standard(key, feet, hertz):
    sounding = frequency(parse_key(key), parse_length(feet))

    assert sounding == pytest.approx(float(hertz), abs=0.0006)
