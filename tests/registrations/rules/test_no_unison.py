from fractions import Fraction

import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import no_unison
from registrations.combination import Music, Player, Texture
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Bourdon 16 (flute stopped)",
        "Principal 8",
        "Octave 4",
        "Fifteenth 2",
        "Twelfth 2 2/3",
        "Mixture 15.19.22",
        "Flute 4 (flute)",
        "Piccolo 2 (flute)",
        "Clarion 4 (reed full-length)",
        "Cornet 1.8.12.15.17 (flute)",
    ],
    swell=["Gemshorn 4"],
    pedal=["Subbass 16 (flute stopped)", "Choralbass 4"],
    couplers=["Swell to Great", "Great to Great 16"],
)
SOLO, TRIO = Music(texture=Texture.SOLO), Music(texture=Texture.TRIO)
IN_THE_PEDALS = Music(texture=Texture.SOLO, solo=Player.FEET)


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8", "octave-4"],
        ["bourdon-16", "octave-4"],
        ["cornet-1-8-12-15-17", "octave-4"],
        ["octave-4", "great-to-great-16"],
        ["pedal/subbass-16"],
        [],
    ],
)
def test_with_an_8_or_a_16_it_is_quiet(drawn):
    assert findings(no_unison, ORGAN, *drawn) == []


def test_only_off_unison_pitches_are_another_matter():
    assert findings(no_unison, ORGAN, "twelfth-2-2-3") == []


def test_a_mixture_without_its_chorus_is_another_matter():
    assert findings(no_unison, ORGAN, "octave-4", "mixture-15-19-22") == []


def test_a_4_that_is_drawn_for_another_keyboard_is_quiet():
    drawn = ["principal-8", "swell/gemshorn-4", "swell-to-great"]

    assert findings(no_unison, ORGAN, *drawn) == []


def test_a_tune_in_the_pedals_at_4_is_quiet():
    drawn, hands = ["principal-8", "pedal/choralbass-4"], {"right": "great", "feet": "pedal"}

    assert findings(no_unison, ORGAN, *drawn, music=IN_THE_PEDALS, **hands) == []


def test_a_chorus_without_an_8_is_found():
    (finding,) = findings(no_unison, ORGAN, "octave-4", "fifteenth-2")

    assert finding.level is Level.WARNING
    assert finding.evidence.stops == ("great/octave-4", "great/fifteenth-2")
    assert finding.evidence.keys == (0, 60)
    assert finding.evidence.lengths == (Fraction(8), Fraction(4), Fraction(2))
    assert finding.message == (
        "On the Great, nothing sounds at 8′: Octave 4′ and Fifteenth 2′ begin at 4′."
    )


def test_a_clarion_alone_in_chords_is_a_warning():
    (finding,) = findings(no_unison, ORGAN, "clarion-4")

    assert finding.level is Level.WARNING


@pytest.mark.parametrize(
    ("drawn", "music"),
    [
        (["octave-4"], None),
        (["flute-4", "piccolo-2"], None),
        (["octave-4", "fifteenth-2"], SOLO),
        (["octave-4", "fifteenth-2"], TRIO),
    ],
)
def test_a_colour_is_only_worth_a_thought(drawn, music):
    (finding,) = findings(no_unison, ORGAN, *drawn, music=music)

    assert finding.level is Level.ADVICE
    assert "begin" in finding.message


def test_the_pedals_want_an_8_or_a_16_as_well():
    (finding,) = findings(no_unison, ORGAN, "pedal/choralbass-4", feet="pedal")

    assert finding.evidence.keyboards == ("pedal",)
