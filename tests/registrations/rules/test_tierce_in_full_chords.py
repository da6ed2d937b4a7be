from fractions import Fraction

import pytest

from instruments.mixtures import Zone, parse_ordinals
from registrations.checks.findings import Level
from registrations.checks.rules import tierce_in_full_chords
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

BREAKING = (Zone(0, parse_ordinals("19.22.26")), Zone(36, parse_ordinals("12.15.17")))
ORGAN = an_organ(
    great=[
        "Principal 8",
        "Octave 4",
        "Flute 8 (flute)",
        "Flute 4 (flute)",
        "Nazard 2 2/3 (flute)",
        "Tierce 1 3/5 (flute)",
        "Sesquialtera 12.17",
        "Mixture 19.22.26",
        "Terzzimbel 15.17.19",
        a_stop("Fourniture", ranks=3, composition=BREAKING),
    ],
    swell=["Principal 8", "Octave 4", "Harmonics 17.19.22"],
    couplers=["Swell to Great"],
)
PLENUM = ("principal-8", "octave-4", "mixture-19-22-26")
SOLO, TRIO = Music(texture=Texture.SOLO), Music(texture=Texture.TRIO)


@pytest.mark.parametrize(
    "drawn",
    [
        PLENUM,
        ["principal-8", "octave-4", "sesquialtera-12-17"],
        ["principal-8", "octave-4", "nazard-2-2-3", "tierce-1-3-5"],
        ["flute-8", "flute-4", "nazard-2-2-3", "tierce-1-3-5"],
        ["flute-8", "flute-4", "tierce-1-3-5", "mixture-19-22-26"],
        ["principal-8", "tierce-1-3-5", "mixture-19-22-26"],
        [],
    ],
)
def test_a_plenum_without_thirds_and_a_cornet_without_a_plenum_are_quiet(drawn):
    assert findings(tierce_in_full_chords, ORGAN, *drawn) == []


@pytest.mark.parametrize("music", [SOLO, TRIO])
def test_a_single_line_is_quiet(music):
    assert findings(tierce_in_full_chords, ORGAN, *PLENUM, "tierce-1-3-5", music=music) == []


def test_the_only_mixture_that_a_division_has_is_quiet():
    drawn = ["swell/principal-8", "swell/octave-4", "swell/harmonics-17-19-22"]

    assert findings(tierce_in_full_chords, ORGAN, *drawn) == []


@pytest.mark.parametrize("third", ["tierce-1-3-5", "sesquialtera-12-17"])
def test_a_third_in_a_plenum_is_found(third):
    (finding,) = findings(tierce_in_full_chords, ORGAN, *PLENUM, third)

    assert finding.level is Level.ADVICE
    assert finding.evidence.stops == (f"great/{third}",)
    assert finding.evidence.lengths == (Fraction(8, 5),)


def test_it_says_what_the_third_does():
    (finding,) = findings(tierce_in_full_chords, ORGAN, *PLENUM, "tierce-1-3-5")

    assert finding.message == (
        "On the Great, Tierce 1⅗′ sounds a third above every note of the chords."
    )


def test_a_mixture_with_a_third_is_found_where_there_is_one_without():
    (finding,) = findings(
        tierce_in_full_chords, ORGAN, "principal-8", "octave-4", "terzzimbel-15-17-19"
    )

    assert finding.evidence.stops == ("great/terzzimbel-15-17-19",)


def test_a_third_that_a_mixture_breaks_into_is_found_from_there():
    (finding,) = findings(tierce_in_full_chords, ORGAN, *PLENUM, "fourniture")

    assert finding.evidence.keys == (36, 60)


def test_a_coupled_mixture_with_a_third_adds_its_own():
    drawn = [*PLENUM, "tierce-1-3-5", "swell/harmonics-17-19-22", "swell-to-great"]
    (finding,) = findings(tierce_in_full_chords, ORGAN, *drawn)

    assert "Tierce 1⅗′ and Harmonics sound a third" in finding.message
