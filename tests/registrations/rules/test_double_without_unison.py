from fractions import Fraction

import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import double_without_unison
from registrations.combination import Music, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Bourdon 16 (flute stopped)",
        "Double Trumpet 16 (reed full-length)",
        "Principal 8",
        "Octave 4",
    ],
    swell=["Fagotto 16 (reed narrow-conical)"],
    pedal=["Subbass 16 (flute stopped)"],
    couplers=["Swell to Great", "Great to Great 16", "Great to Great 4", "Great Unison Off"],
)
SOLO, TRIO = Music(texture=Texture.SOLO), Music(texture=Texture.TRIO)


@pytest.mark.parametrize(
    "drawn",
    [
        ["bourdon-16", "principal-8"],
        ["principal-8", "great-to-great-16"],
        ["bourdon-16", "great-to-great-4"],
        ["octave-4"],
        ["pedal/subbass-16"],
        [],
    ],
)
def test_a_double_with_its_8_and_a_bass_in_the_pedals_are_quiet(drawn):
    assert findings(double_without_unison, ORGAN, *drawn) == []


def test_a_swell_that_is_drawn_for_the_great_is_quiet():
    drawn = ["principal-8", "swell/fagotto-16", "swell-to-great"]

    assert findings(double_without_unison, ORGAN, *drawn) == []
    assert findings(double_without_unison, ORGAN, *drawn, right="great") == []


def test_a_keyboard_that_nobody_plays_is_quiet():
    drawn = ["principal-8", "swell/fagotto-16"]

    assert findings(double_without_unison, ORGAN, *drawn, right="great") == []


def test_16_and_4_without_an_8_is_found():
    (finding,) = findings(double_without_unison, ORGAN, "bourdon-16", "octave-4")

    assert finding.level is Level.WARNING
    assert finding.evidence.stops == ("great/bourdon-16",)
    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.lengths == (Fraction(8), Fraction(16))
    assert finding.message == (
        "On the Great, Bourdon 16′ sounds at 16′ with no 8′ above: all is heard an octave low."
    )


def test_doubles_are_told_together():
    (finding,) = findings(double_without_unison, ORGAN, "bourdon-16", "double-trumpet-16")

    assert "Bourdon 16′ and Double Trumpet 16′ sound at 16′" in finding.message


def test_a_coupler_that_takes_the_8_down_is_found_with_its_keys():
    drawn = ["principal-8", "great-to-great-16", "great-unison-off"]
    (finding,) = findings(double_without_unison, ORGAN, *drawn)

    assert finding.evidence.keys == (12, 60)
    assert finding.message.startswith("On the Great, from c to c4, Principal 8′ sounds at 16′")


@pytest.mark.parametrize("music", [SOLO, TRIO])
def test_as_a_solo_it_is_only_worth_a_thought(music):
    (finding,) = findings(double_without_unison, ORGAN, "bourdon-16", music=music)

    assert finding.level is Level.ADVICE
