from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import mutation_alone
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Double 16",
        "Principal 8",
        "Octave 4",
        a_stop("Treble 8", compass=Compass(24, 60)),
        "Twelfth 2 2/3",
        "Tierce 1 3/5",
        "Quint 5 1/3",
        "Sesquialtera 12.17",
        "Mixture 19.22",
        a_stop("Drum", "percussion"),
    ],
    swell=["Flute 8 (flute)", "Nazard 2 2/3 (flute)"],
    couplers=["Swell to Great"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        [],
        ["principal-8"],
        ["principal-8", "twelfth-2-2-3"],
        ["octave-4", "twelfth-2-2-3"],
        ["double-16", "quint-5-1-3"],
        ["mixture-19-22"],
        ["drum"],
    ],
)
def test_a_unison_an_octave_or_a_mixture_keeps_it_quiet(drawn):
    assert findings(mutation_alone, ORGAN, *drawn) == []


def test_a_mutation_on_a_keyboard_that_nobody_plays_is_quiet():
    drawn = ["principal-8", "swell/nazard-2-2-3", "swell-to-great"]

    assert findings(mutation_alone, ORGAN, *drawn, right="great", left="great") == []


@pytest.mark.parametrize("drawn", [["twelfth-2-2-3"], ["tierce-1-3-5", "twelfth-2-2-3"]])
def test_mutations_alone_are_found(drawn):
    (finding,) = findings(mutation_alone, ORGAN, *drawn)

    assert finding.level is Level.WARNING
    assert finding.evidence.keys == (0, 60)


def test_a_sesquialtera_alone_is_mutations_alone():
    (finding,) = findings(mutation_alone, ORGAN, "sesquialtera-12-17")

    assert finding.evidence.lengths == (Fraction(8, 3), Fraction(8, 5))


def test_a_treble_stop_bares_the_bass():
    (finding,) = findings(mutation_alone, ORGAN, "treble-8", "twelfth-2-2-3")

    assert finding.message == (
        "On the Great, from C to b, only Twelfth 2⅔′ sounds: "
        "there is no unison or octave to colour."
    )


def test_a_mutation_alone_under_a_hand_is_found_though_it_is_coupled_to_a_unison():
    drawn = ["principal-8", "swell/nazard-2-2-3", "swell-to-great"]
    (finding,) = findings(mutation_alone, ORGAN, *drawn)

    assert finding.evidence.keyboards == ("swell",)
