from fractions import Fraction

from instruments import pitch
from tests.reference.tables import replay


@replay("interval ratio cents", "ellis_1885.txt")
def test_an_interval_has_the_whole_cents_of_ellis(interval, ratio, cents):
    length = pitch.UNISON / Fraction(ratio)

    assert round(pitch.cents(length)) == int(cents)
