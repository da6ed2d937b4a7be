from fractions import Fraction

from registrations.checks.offered import lengths_offered
from tests.builders import an_organ

ORGAN = an_organ(
    great=["Principal 8", "Mixture 15.19"],
    swell=["Oboe 8"],
    pedal=["Bourdon 16"],
    couplers=["Great to Pedal"],
)


def offered(keyboard):
    return sorted(set(lengths_offered(ORGAN, ORGAN.keyboard(keyboard))), reverse=True)


def test_what_is_at_home_is_offered():
    assert offered("swell") == [8]


def test_so_is_what_a_coupler_could_bring_mixtures_with_all_their_ranks():
    assert offered("pedal") == [16, 8, 2, Fraction(4, 3)]
