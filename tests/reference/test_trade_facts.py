"""What every organist knows about drawing stops: common practice, no source.

None of these is a published value. Where one follows from a definition, that is said beside it.
"""

from fractions import Fraction

import pytest

from instruments.pitch import interval_name, parse_length
from registrations.checks import run
from registrations.checks.findings import Level
from registrations.checks.scene import Scene
from registrations.sounding import lengths_on, sounds
from tests.builders import a_combination, an_organ

ORGAN = an_organ(
    great=[
        "Open Diapason 8",
        "Principal 4",
        "Fifteenth 2",
        "Mixture 19.22.26",
        "Trumpet 8 (reed full-length)",
    ],
    swell=[
        "Stopped Diapason 8 (flute stopped)",
        "Flute 4 (flute)",
        "Nazard 2 2/3 (flute)",
        "Tierce 1 3/5 (flute)",
    ],
    pedal=["Bourdon 16 (flute stopped)"],
    couplers=["Swell to Great", "Great to Pedal", "Swell to Pedal"],
    tremulants=["swell"],
)
FLUTES = ("stopped-diapason-8", "flute-4", "nazard-2-2-3", "tierce-1-3-5")


def found(*drawn):
    return {one.rule: one.level for one in run(Scene(ORGAN, a_combination(*drawn)))}


def on_swell(*names):
    return [f"swell/{name}" for name in names]


@pytest.mark.parametrize(
    ("label", "interval"),
    [
        # Common practice, no source; both follow from the harmonic series (3 and 5).
        ("2 2/3", "an octave and a fifth higher"),
        ("1 3/5", "two octaves and a major third higher"),
    ],
)
def test_mutations_sound_where_every_organist_hears_them(label, interval):
    assert interval_name(parse_length(label)) == interval


@pytest.mark.parametrize("count", [3, 4])
def test_flutes_8_4_and_2_2_3_and_1_3_5_raise_no_gap(count):
    # Common practice, no source.
    assert found(*on_swell(*FLUTES[:count])) == {}


def test_8_with_2_2_3_alone_raises_a_gap_and_8_with_1_3_5_alone_a_worse_one():
    # Common practice, no source.
    nazard = found(*on_swell("stopped-diapason-8", "nazard-2-2-3"))
    tierce = found(*on_swell("stopped-diapason-8", "tierce-1-3-5"))

    assert nazard == {"gap-below-mutation": Level.ADVICE}
    assert tierce == {"gap-below-mutation": Level.WARNING}


def test_a_mixture_on_principals_8_4_and_2_is_quiet():
    # Common practice, no source.
    names = ("open-diapason-8", "principal-4", "fifteenth-2", "mixture-19-22-26")

    assert found(*(f"great/{name}" for name in names)) == {}


@pytest.mark.parametrize("accessory", ["swell-to-great", "great-to-pedal", "swell/tremulant"])
def test_accessories_alone_are_silence(accessory):
    # Common practice, no source; they have no pipes.
    combination = a_combination(accessory)

    assert not any(sounds(ORGAN, combination, one.id) for one in ORGAN.keyboards)
    assert found(accessory)["only-accessories"] is Level.FAULT


def test_swell_to_great_makes_the_great_sound_the_swell_and_not_the_reverse():
    # Common practice, no source.
    swell = a_combination("swell/flute-4", "swell-to-great")
    great = a_combination("great/trumpet-8", "swell-to-great")

    assert lengths_on(ORGAN, swell, "great") == (Fraction(4),)
    assert lengths_on(ORGAN, great, "swell") == ()


@pytest.mark.parametrize(
    ("stop", "coupler"),
    [("great/trumpet-8", "great-to-pedal"), ("swell/stopped-diapason-8", "swell-to-pedal")],
)
def test_a_manual_to_pedal_coupler_gives_the_feet_the_manuals_stops(stop, coupler):
    # Common practice, no source.
    assert lengths_on(ORGAN, a_combination(stop, coupler), "pedal") == (Fraction(8),)
