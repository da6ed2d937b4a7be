from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import gap_below_mutation
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Bourdon 16 (flute stopped)",
        "Flute 8 (flute)",
        "Flute 4 (flute)",
        a_stop("Treble Flute 4", "flute", compass=Compass(24, 60)),
        "Piccolo 2 (flute)",
        "Quint 5 1/3 (flute)",
        "Nazard 2 2/3 (flute)",
        "Tierce 1 3/5 (flute)",
        "Larigot 1 1/3 (flute)",
        "Mixture 15.19.22",
        "Sesquialtera 12.17 (flute)",
        "Gedackt 8 (flute stopped)",
        "Principal 8",
        "Gamba 8 (string)",
        "Trumpet 8 (reed full-length)",
        "Bells 2 2/3 (percussion)",
        "Cornet 1.8.12.15.17 (flute)",
    ],
    couplers=["Great to Great 4"],
)


def stand_out(finding):
    return dict(finding.evidence.numbers)["stand_out_db"]


@pytest.mark.parametrize(
    "drawn",
    [
        ["flute-8", "flute-4", "nazard-2-2-3"],
        ["flute-8", "flute-4", "nazard-2-2-3", "tierce-1-3-5"],
        ["flute-8", "flute-4", "nazard-2-2-3", "piccolo-2", "tierce-1-3-5"],
        ["bourdon-16", "flute-8", "quint-5-1-3"],
        ["flute-8", "piccolo-2"],
        ["flute-8", "sesquialtera-12-17"],
        ["cornet-1-8-12-15-17"],
        ["cornet-1-8-12-15-17", "nazard-2-2-3", "tierce-1-3-5"],
    ],
)
def test_mutations_that_the_lower_pitches_lead_up_to_are_quiet(drawn):
    assert findings(gap_below_mutation, ORGAN, *drawn) == []


@pytest.mark.parametrize(
    "drawn", [["nazard-2-2-3"], ["quint-5-1-3", "larigot-1-1-3"], ["piccolo-2", "nazard-2-2-3"]]
)
def test_with_nothing_lower_there_is_no_gap(drawn):
    assert findings(gap_below_mutation, ORGAN, *drawn) == []


@pytest.mark.parametrize("bridge", ["principal-8", "gamba-8", "trumpet-8"])
def test_overtones_that_bridge_the_step_to_a_nazard_keep_it_quiet(bridge):
    assert findings(gap_below_mutation, ORGAN, bridge, "nazard-2-2-3") == []


def test_8_and_2_2_3_is_advice():
    (finding,) = findings(gap_below_mutation, ORGAN, "flute-8", "nazard-2-2-3")

    assert finding.level is Level.ADVICE
    assert finding.evidence.lengths == (Fraction(8, 3), Fraction(4))
    assert dict(finding.evidence.numbers) == {"step_cents": 1901.955, "stand_out_db": 23.7}
    assert finding.message == (
        "On the Great, Nazard 2⅔′ is an octave and a fifth higher than the next pitch below it, "
        "8′: 4′ is missing between."
    )


def test_8_and_1_3_5_is_worse():
    (finding,) = findings(gap_below_mutation, ORGAN, "flute-8", "tierce-1-3-5")

    assert finding.level is Level.WARNING
    assert finding.evidence.lengths == (Fraction(8, 5), Fraction(4), Fraction(2))
    assert "4′ and 2′ are missing" in finding.message


@pytest.mark.parametrize("unison", ["flute-8", "gedackt-8", "principal-8", "gamba-8"])
def test_a_tierce_stands_out_more_than_a_nazard(unison):
    nazard = findings(gap_below_mutation, ORGAN, unison, "nazard-2-2-3")
    (tierce,) = findings(gap_below_mutation, ORGAN, unison, "tierce-1-3-5")

    assert tierce.level is Level.WARNING
    for one in nazard:
        assert one.level is Level.ADVICE
        assert stand_out(one) < stand_out(tierce)


def test_a_2_above_the_twelfth_does_not_fill_the_gap_below_it():
    drawn = ["flute-8", "nazard-2-2-3", "piccolo-2"]
    (finding,) = findings(gap_below_mutation, ORGAN, *drawn)

    assert stand_out(finding) == 23.7


def test_a_trumpet_bridges_the_step_to_a_tierce_half_way():
    (finding,) = findings(gap_below_mutation, ORGAN, "trumpet-8", "tierce-1-3-5")

    assert finding.level is Level.ADVICE
    assert stand_out(finding) < 10


def test_what_the_model_has_no_tone_for_is_not_measured():
    (finding,) = findings(gap_below_mutation, ORGAN, "flute-8", "bells-2-2-3")

    assert finding.level is Level.ADVICE
    assert dict(finding.evidence.numbers) == {"step_cents": 1901.955}


def test_the_lowest_of_two_mutations_is_the_one_that_stands_off():
    (finding,) = findings(gap_below_mutation, ORGAN, "flute-8", "nazard-2-2-3", "tierce-1-3-5")

    assert finding.evidence.stops == ("great/nazard-2-2-3",)


def test_a_treble_octave_leaves_the_gap_in_the_bass():
    (finding,) = findings(gap_below_mutation, ORGAN, "flute-8", "treble-flute-4", "nazard-2-2-3")

    assert finding.evidence.keys == (0, 23)


def test_the_widest_step_is_told_where_it_varies():
    drawn = ["flute-8", "treble-flute-4", "tierce-1-3-5"]
    (finding,) = findings(gap_below_mutation, ORGAN, *drawn)

    assert (finding.level, finding.evidence.keys) == (Level.WARNING, (0, 23))


def test_an_octave_coupler_can_fill_the_gap():
    found = findings(gap_below_mutation, ORGAN, "flute-8", "nazard-2-2-3", "great-to-great-4")

    # The 8 fills its own octave; the top octave, where the coupler has no pipes left, stays bare.
    assert [finding.evidence.keys for finding in found] == [(49, 60)]
