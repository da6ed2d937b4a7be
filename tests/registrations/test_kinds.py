from fractions import Fraction

import pytest

from registrations.checks.kinds import (
    chorus_stops,
    is_chorus_mixture,
    is_chorus_reed,
    is_mutation,
    is_principal,
    is_solo_compound,
    is_third,
)
from tests.builders import a_stop


@pytest.mark.parametrize(
    ("stop", "solo"),
    [
        ("Principal 8", False),
        ("Mixture 15.19.22", False),
        ("Mixture 12.15.17", False),
        ("Terzzimbel 15.17.19", False),
        ("Rauschquinte 12.15", False),
        ("Cornet 1.8.12.15.17", True),
        ("Cornet 8.12.15.17 (flute)", True),
        ("Sesquialtera 12.17", True),
        ("Terzian 17.19", True),
    ],
)
def test_a_compound_stop_carries_a_tune_or_crowns_a_chorus(stop, solo):
    assert is_solo_compound(a_stop(stop)) is solo


def test_a_single_rank_is_no_mixture():
    assert not is_chorus_mixture(a_stop("Twelfth 2 2/3"))


@pytest.mark.parametrize(("feet", "third"), [("1 3/5", True), ("3 1/5", True), ("2 2/3", False)])
def test_a_tierce_is_told_by_its_length(feet, third):
    stop = a_stop(f"Rank {feet}")

    assert is_third(stop.length) is third


@pytest.mark.parametrize("harmonic", [15, 25, 7])
def test_a_fifteenth_harmonic_is_no_third(harmonic):
    assert not is_third(Fraction(8, harmonic))


@pytest.mark.parametrize(
    ("stop", "mutation"), [("Nazard 2 2/3", True), ("Octave 4", False), ("Mixture 19.22", False)]
)
def test_a_mutation_is_one_off_unison_rank(stop, mutation):
    assert is_mutation(a_stop(stop)) is mutation


@pytest.mark.parametrize("tone", ["reed short", "reed half-length", "flute full-length"])
def test_not_every_reed_is_a_chorus_reed(tone):
    assert not is_chorus_reed(a_stop(f"Stop 8 ({tone})"))


@pytest.mark.parametrize(
    "stop", ["Voce Umana 8 (principal undulating)", "Mixture 19.22", "Flute 8 (flute)"]
)
def test_not_all_of_principal_tone_is_a_principal(stop):
    assert not is_principal(a_stop(stop))


def test_two_principals_of_one_pitch_are_no_chorus():
    stops = [a_stop("Diapason 8"), a_stop("Principal 8"), a_stop("Flute 4 (flute)")]

    assert chorus_stops(stops) == ()


def test_principals_at_two_pitches_are_a_chorus():
    stops = [a_stop("Diapason 8"), a_stop("Octave 4"), a_stop("Flute 4 (flute)")]

    assert chorus_stops([*stops, *stops]) == tuple(stops[:2])
