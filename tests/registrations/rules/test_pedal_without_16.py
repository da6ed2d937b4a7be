from fractions import Fraction

import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import pedal_without_16
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Bourdon 16", "Principal 8"],
    pedal=["Subbass 32", "Bourdon 16", "Bass Flute 8", "Choral Bass 4"],
    couplers=["Great to Pedal"],
)
FLUTE = "pedal/bass-flute-8"


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8"],
        ["pedal/bourdon-16"],
        ["pedal/bourdon-16", FLUTE],
        ["pedal/subbass-32", FLUTE],
        ["bourdon-16", "great-to-pedal"],
    ],
)
def test_a_16_or_silent_pedals_are_quiet(drawn):
    assert findings(pedal_without_16, ORGAN, *drawn) == []


def test_feet_that_rest_are_quiet():
    assert findings(pedal_without_16, ORGAN, FLUTE, "principal-8", right="great") == []


def test_feet_on_silent_pedals_are_another_fault():
    assert findings(pedal_without_16, ORGAN, "principal-8", right="great", feet="pedal") == []


def test_a_tune_in_the_feet_is_quiet():
    music = Music(texture=Texture.SOLO, solo=Player.FEET)

    assert findings(pedal_without_16, ORGAN, "pedal/choral-bass-4", music=music) == []


@pytest.mark.parametrize("hands", [{}, {"right": "great", "feet": "pedal"}])
def test_an_8_alone_under_the_feet_is_found(hands):
    (finding,) = findings(pedal_without_16, ORGAN, FLUTE, **hands)

    assert finding.level is Level.WARNING
    assert finding.evidence.lengths == (Fraction(8),)
    assert finding.message == ("On the Pedal, nothing lower than 8′ sounds: the bass has no 16′.")


def test_a_coupled_manual_without_16_is_found():
    assert len(findings(pedal_without_16, ORGAN, "principal-8", "great-to-pedal")) == 1


def test_in_a_trio_it_is_advice():
    (finding,) = findings(pedal_without_16, ORGAN, FLUTE, music=Music(texture=Texture.TRIO))

    assert finding.level is Level.ADVICE


def test_where_the_organ_has_no_16_for_the_feet_it_is_advice():
    french = an_organ(great=["Montre 16"], pedal=["Bass Flute 8", "Trompette 8"])
    (finding,) = findings(pedal_without_16, french, FLUTE)

    assert finding.level is Level.ADVICE


def test_a_16_that_a_coupler_could_bring_makes_it_a_warning():
    organ = an_organ(great=["Montre 16"], pedal=["Bass Flute 8"], couplers=["Great to Pedal"])
    (finding,) = findings(pedal_without_16, organ, FLUTE)

    assert finding.level is Level.WARNING
