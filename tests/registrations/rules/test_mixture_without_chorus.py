from fractions import Fraction

import pytest

from instruments.compass import Compass
from instruments.mixtures import Zone
from registrations.checks.findings import Level
from registrations.checks.rules import mixture_without_chorus
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

PLAIN = ["principal-8", "octave-4", "fifteenth-2"]
ORGAN = an_organ(
    great=[
        "Double 16",
        "Principal 8",
        "Octave 4",
        "Fifteenth 2",
        a_stop("Treble 4", compass=Compass(24, 60)),
        "Flute 8 (flute)",
        "Flute 4 (flute)",
        "Flute 2 (flute)",
        "Trumpet 8 (reed full-length)",
        "Clarion 4 (reed full-length)",
        "Mixture 19.22.26",
        "Fourniture 15.19.22",
        "Cornet 1.8.12.15.17",
        "Sesquialtera 12.17",
        "Kornett 12.15.17 (flute)",
    ],
    pedal=["Open Wood 16", "Octave 8", "Choral Bass 4", "Mixture 19.22"],
    couplers=["Great to Pedal"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8", "fifteenth-2"],
        [*PLAIN, "mixture-19-22-26"],
        ["double-16", *PLAIN, "mixture-19-22-26"],
        ["double-16", "octave-4", "fifteenth-2", "mixture-19-22-26"],
        ["principal-8", "octave-4", "fourniture-15-19-22"],
        ["trumpet-8", "clarion-4", "flute-2", "mixture-19-22-26"],
        ["cornet-1-8-12-15-17"],
        ["flute-8", "sesquialtera-12-17"],
        ["flute-8", "flute-4", "kornett-12-15-17"],
    ],
)
def test_a_built_chorus_and_a_solo_compound_are_quiet(drawn):
    assert findings(mixture_without_chorus, ORGAN, *drawn) == []


@pytest.mark.parametrize(
    "drawn", [["open-wood-16", "octave-8", "choral-bass-4"], ["octave-8", "choral-bass-4"]]
)
def test_the_pedals_build_from_16_or_from_8(drawn):
    given = [f"pedal/{name}" for name in (*drawn, "mixture-19-22")]
    if "open-wood-16" not in drawn:
        given = [*given, "great/fifteenth-2", "great-to-pedal"]

    assert findings(mixture_without_chorus, ORGAN, *given, feet="pedal") == []


@pytest.mark.parametrize(
    ("drawn", "missing"),
    [
        ([], (8, 4)),
        (["principal-8"], (4,)),
        (["octave-4", "fifteenth-2"], (8,)),
        (["double-16", "principal-8"], (4,)),
    ],
)
def test_a_mixture_without_8_or_4_is_found(drawn, missing):
    (finding,) = findings(mixture_without_chorus, ORGAN, *drawn, "mixture-19-22-26")

    assert finding.level is Level.WARNING
    assert finding.evidence.lengths == tuple(map(Fraction, missing))


def test_the_pedals_want_an_8_between_the_16_and_the_mixture():
    drawn = ["pedal/open-wood-16", "pedal/mixture-19-22"]
    (finding,) = findings(mixture_without_chorus, ORGAN, *drawn)

    assert finding.message == "On the Pedal, Mixture has no 8′ below."


def test_a_high_mixture_without_a_2_is_advice():
    drawn = ["principal-8", "octave-4", "mixture-19-22-26"]
    (finding,) = findings(mixture_without_chorus, ORGAN, *drawn)

    assert (finding.level, finding.evidence.lengths) == (Level.ADVICE, (Fraction(2),))


def test_a_mixture_on_flutes_is_advice():
    drawn = ["flute-8", "flute-4", "flute-2", "mixture-19-22-26"]
    (finding,) = findings(mixture_without_chorus, ORGAN, *drawn)

    assert finding.level is Level.ADVICE
    assert finding.message == "On the Great, Mixture has no principal below."


def test_what_is_worst_is_told_where_the_keyboard_varies():
    drawn = ["principal-8", "treble-4", "mixture-19-22-26", "fourniture-15-19-22"]
    (finding,) = findings(mixture_without_chorus, ORGAN, *drawn)

    assert (finding.level, finding.evidence.keys) == (Level.WARNING, (0, 23))
    assert "Mixture and Fourniture have no 4′ below" in finding.message


def test_a_mixture_that_breaks_back_to_8_is_no_solo_stop():
    zones = (Zone(0, (Fraction(2), Fraction(1))), Zone(36, (Fraction(8), Fraction(4))))
    organ = an_organ(great=[a_stop("Mixture", composition=zones, ranks=2)])

    assert len(findings(mixture_without_chorus, organ, "mixture")) == 1
