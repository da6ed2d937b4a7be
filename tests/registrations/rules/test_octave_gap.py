from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import octave_gap
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Bourdon 16 (flute stopped)",
        "Principal 8",
        "Octave 4",
        a_stop("Treble Flute 4", "flute", compass=Compass(24, 60)),
        "Fifteenth 2",
        "Piccolo 2 (flute)",
        "Sifflet 1 (flute)",
        "Twelfth 2 2/3",
        "Mixture 22.26.29",
        "Cornet 12.15.17 (flute)",
    ],
    pedal=["Subbass 16 (flute stopped)", "Bass 8", "Choralbass 4"],
    couplers=["Great to Great 4"],
)
SOLO, TRIO = Music(texture=Texture.SOLO), Music(texture=Texture.TRIO)


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8", "octave-4", "fifteenth-2", "sifflet-1"],
        ["bourdon-16", "principal-8", "octave-4"],
        ["pedal/subbass-16", "pedal/bass-8", "pedal/choralbass-4"],
        ["octave-4"],
        [],
    ],
)
def test_octaves_that_follow_one_another_are_quiet(drawn):
    assert findings(octave_gap, ORGAN, *drawn) == []


@pytest.mark.parametrize("music", [SOLO, TRIO])
@pytest.mark.parametrize("top", ["fifteenth-2", "sifflet-1"])
def test_in_a_single_line_8_and_2_is_a_colour(top, music):
    assert findings(octave_gap, ORGAN, "principal-8", top, music=music) == []


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8", "twelfth-2-2-3", "fifteenth-2"],
        ["principal-8", "octave-4", "mixture-22-26-29"],
        ["principal-8", "cornet-12-15-17"],
        ["bourdon-16", "octave-4"],
    ],
)
def test_gaps_that_other_rules_speak_of_are_quiet(drawn):
    assert findings(octave_gap, ORGAN, *drawn) == []


def test_8_and_2_in_chords_is_worth_a_thought():
    (finding,) = findings(octave_gap, ORGAN, "principal-8", "fifteenth-2", "piccolo-2")

    assert finding.level is Level.ADVICE
    assert finding.evidence.stops == ("great/fifteenth-2", "great/piccolo-2")
    assert finding.evidence.lengths == (Fraction(2), Fraction(4))
    assert dict(finding.evidence.numbers) == {"step_cents": 2400.0}
    assert finding.message == (
        "On the Great, Fifteenth 2′ and Piccolo 2′ stand over 8′ with no 4′ between."
    )


def test_8_and_1_lacks_two_octaves():
    (finding,) = findings(octave_gap, ORGAN, "principal-8", "sifflet-1")

    assert "Sifflet 1′ stands over 8′ with no 4′ and 2′ between" in finding.message


def test_a_gap_above_a_twelfth_is_found():
    (finding,) = findings(
        octave_gap, ORGAN, "principal-8", "octave-4", "twelfth-2-2-3", "sifflet-1"
    )

    assert finding.evidence.lengths == (Fraction(1), Fraction(2))


def test_a_treble_octave_leaves_the_gap_in_the_bass():
    (finding,) = findings(octave_gap, ORGAN, "principal-8", "treble-flute-4", "fifteenth-2")

    assert finding.evidence.keys == (0, 23)


def test_16_and_4_in_the_pedals_lacks_the_8():
    (finding,) = findings(octave_gap, ORGAN, "pedal/subbass-16", "pedal/choralbass-4")

    assert finding.evidence.keyboards == ("pedal",)
    assert finding.evidence.lengths == (Fraction(4), Fraction(8))


def test_an_octave_coupler_fills_the_gap_as_far_as_it_has_pipes():
    (finding,) = findings(octave_gap, ORGAN, "principal-8", "fifteenth-2", "great-to-great-4")

    assert finding.evidence.keys == (49, 60)
