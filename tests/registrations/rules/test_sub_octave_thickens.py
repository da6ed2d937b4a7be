import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import sub_octave_thickens
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Double Diapason 16",
        "Principal 8",
        "Octave 4",
        "Flute 8 (flute)",
        "Mixture 15.19.22",
        a_stop("Treble Double 16", compass=Compass(24, 60)),
    ],
    pedal=["Bourdon 16"],
    couplers=["Great to Great 16", "Great to Great 4", "Great to Pedal 16"],
)
CHORUS = ["principal-8", "octave-4"]


@pytest.mark.parametrize(
    "drawn",
    [
        CHORUS,
        [*CHORUS, "great-to-great-4"],
        ["flute-8", "great-to-great-16"],
        ["principal-8", "great-to-great-16"],
    ],
)
def test_no_suboctave_and_a_single_8_are_quiet(drawn):
    assert findings(sub_octave_thickens, ORGAN, *drawn) == []


@pytest.mark.parametrize("texture", [Texture.SOLO, Texture.TRIO])
def test_without_chords_it_is_quiet(texture):
    music = Music(texture=texture)

    assert findings(sub_octave_thickens, ORGAN, *CHORUS, "great-to-great-16", music=music) == []


def test_pedals_play_no_chords():
    drawn = [*CHORUS, "great-to-pedal-16"]

    assert findings(sub_octave_thickens, ORGAN, *drawn, feet="pedal") == []


def test_a_stop_of_the_treble_thickens_no_bass():
    assert findings(sub_octave_thickens, ORGAN, "treble-double-16", "great-to-great-16") == []


def test_a_chorus_an_octave_lower_is_found():
    (finding,) = findings(sub_octave_thickens, ORGAN, *CHORUS, "flute-8", "great-to-great-16")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keys == (12, 23)
    assert finding.evidence.stops == ("great/principal-8", "great/octave-4")
    assert finding.evidence.couplers == ("great-to-great-16",)
    assert finding.message == (
        "On the Great, from c to b, Great to Great 16 doubles Principal 8′ and Octave 4′ "
        "an octave lower: chords turn thick."
    )


def test_a_double_comes_out_at_32():
    drawn = ["double-diapason-16", "flute-8", "great-to-great-16"]
    (finding,) = findings(sub_octave_thickens, ORGAN, *drawn)

    assert finding.evidence.stops == ("great/double-diapason-16",)


def test_a_mixture_counts_as_a_chorus():
    (finding,) = findings(sub_octave_thickens, ORGAN, "mixture-15-19-22", "great-to-great-16")

    assert finding.evidence.stops == ("great/mixture-15-19-22",)
