from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import thick_in_the_bass
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Bourdon 16 (flute stopped)",
        "Principal 8",
        "Octave 4",
        "Fifteenth 2",
        "Mixture 15.19.22",
        "Trumpet 8 (reed full-length)",
        a_stop("Treble Double 16", compass=Compass(24, 60)),
    ],
    swell=["Flute 8 (flute)", "Lieblich Bourdon 16 (flute)"],
    pedal=["Subbass 16"],
    couplers=["Great to Great 16", "Swell to Great 16", "Swell to Great 4", "Swell to Great"],
)
DOUBLED = ["bourdon-16", "principal-8", "octave-4"]


def found(*drawn, texture=Texture.CHORDS, **hands):
    return findings(thick_in_the_bass, ORGAN, *drawn, music=Music(texture=texture), **hands)


def test_an_8_and_a_4_are_quiet():
    assert found("principal-8", "octave-4") == []


@pytest.mark.parametrize("crown", ["fifteenth-2", "mixture-15-19-22", "trumpet-8"])
def test_a_crown_makes_it_gravity(crown):
    assert found(*DOUBLED, crown) == []


@pytest.mark.parametrize("texture", [Texture.SOLO, Texture.TRIO])
def test_a_single_line_bears_it(texture):
    assert found(*DOUBLED, texture=texture) == []


def test_pedals_want_their_16():
    assert found("pedal/subbass-16", feet="pedal") == []


def test_a_16_without_an_8_is_played_an_octave_higher():
    assert found("bourdon-16", "octave-4") == []


def test_a_double_that_is_lent_to_a_chorus_is_quiet():
    drawn = ["principal-8", "octave-4", "fifteenth-2", "swell/flute-8"]

    assert found(*drawn, "swell/lieblich-bourdon-16", "swell-to-great") == []


def test_a_16_of_the_treble_is_quiet():
    assert found("treble-double-16", "principal-8") == []


def test_a_16_under_chords_is_found():
    (finding,) = found(*DOUBLED)

    assert finding.level is Level.ADVICE
    assert finding.evidence.stops == ("great/bourdon-16",)
    assert finding.evidence.keys == (0, 23)
    assert finding.evidence.lengths == (Fraction(16),)
    assert finding.message == (
        "On the Great, from C to b, Bourdon 16′ sounds at 16′ under chords: they turn thick."
    )


def test_a_suboctave_makes_a_16_of_an_8():
    drawn = ["principal-8", "swell/flute-8", "great-to-great-16", "swell-to-great-16"]
    (finding,) = found(*drawn)

    assert finding.evidence.couplers == ("great-to-great-16", "swell-to-great-16")
    assert finding.evidence.keys == (12, 23)
    assert finding.message.startswith(
        "On the Great, from c to b, Principal 8′ and Flute 8′ sound at 16′"
    )


def test_an_octave_coupler_beside_the_16_is_not_to_blame():
    (finding,) = found(*DOUBLED, "swell/flute-8", "swell-to-great-4")

    assert finding.evidence.couplers == ()
