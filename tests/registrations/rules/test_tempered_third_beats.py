import dataclasses
from fractions import Fraction

import pytest

from instruments.compass import Compass
from instruments.temperament import MEANTONE, VALLOTTI
from registrations.checks.findings import Level
from registrations.checks.rules import tempered_third_beats
from registrations.combination import Music, Texture
from registrations.roughness import beat
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

CHORUS = ["flute-8", "flute-4", "flute-2"]
ORGAN = an_organ(
    great=[
        "Flute 8 (flute)",
        "Flute 4 (flute)",
        "Flute 2 (flute)",
        "Tierce 1 3/5 (flute)",
        "Grosse Tierce 3 1/5 (flute)",
        "Petite Tierce 4/5 (flute)",
        "Mixture 15.17.22",
        a_stop("Borrowed Tierce 1 3/5", borrowed_from="great/flute-8"),
        a_stop("High Tierce 1 3/5", compass=Compass(36, 60)),
    ],
    pedal=["Bourdon 16"],
)


def tuned(temperament):
    return dataclasses.replace(ORGAN, temperament=temperament.name)


@pytest.mark.parametrize("third", ["borrowed-tierce-1-3-5", "high-tierce-1-3-5", "flute-2"])
def test_what_sounds_no_pure_third_at_middle_c_is_quiet(third):
    assert findings(tempered_third_beats, ORGAN, *CHORUS, third, right="great", left="great") == []


def test_in_meantone_the_thirds_are_pure():
    organ = tuned(MEANTONE)

    assert (
        findings(
            tempered_third_beats,
            organ,
            *CHORUS,
            "tierce-1-3-5",
            "mixture-15-17-22",
            right="great",
            left="great",
        )
        == []
    )


def test_slow_beats_are_followed():
    assert (
        findings(
            tempered_third_beats,
            tuned(VALLOTTI),
            *CHORUS,
            "tierce-1-3-5",
            right="great",
            left="great",
        )
        == []
    )
    assert (
        findings(
            tempered_third_beats, ORGAN, *CHORUS, "grosse-tierce-3-1-5", right="great", left="great"
        )
        == []
    )


@pytest.mark.parametrize("texture", [Texture.SOLO, Texture.TRIO])
def test_a_tune_has_nothing_to_beat_with(texture):
    music = Music(texture=texture)

    assert (
        findings(
            tempered_third_beats,
            ORGAN,
            *CHORUS,
            "tierce-1-3-5",
            music=music,
            right="great",
            left="great",
        )
        == []
    )


def test_a_tierce_under_chords_beats_in_equal_temperament():
    (finding,) = findings(
        tempered_third_beats, ORGAN, *CHORUS, "tierce-1-3-5", right="great", left="great"
    )

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.stops == ("great/tierce-1-3-5",)
    assert finding.evidence.numbers == (("beat_hz", 10.38),)
    assert finding.message == (
        "On the Great, Tierce 1⅗′ beats about 10 times a second with the thirds of a chord at "
        "middle C: the rank is tuned pure, the keys are not."
    )


def test_the_figure_is_that_of_the_rank_by_itself():
    (finding,) = findings(
        tempered_third_beats, ORGAN, *CHORUS, "tierce-1-3-5", right="great", left="great"
    )

    expected = beat(ORGAN, Fraction(8, 5), 24)
    assert dict(finding.evidence.numbers)["beat_hz"] == pytest.approx(expected, abs=0.01)


def test_the_third_in_a_mixture_counts():
    (finding,) = findings(
        tempered_third_beats, ORGAN, *CHORUS, "mixture-15-17-22", right="great", left="great"
    )

    assert finding.evidence.stops == ("great/mixture-15-17-22",)


def test_a_third_that_beats_slowly_is_not_named_with_one_that_beats_quickly():
    drawn = ["grosse-tierce-3-1-5", "tierce-1-3-5", "petite-tierce-4-5"]
    (finding,) = findings(tempered_third_beats, ORGAN, *CHORUS, *drawn, right="great", left="great")

    assert finding.evidence.stops == ("great/tierce-1-3-5", "great/petite-tierce-4-5")
    assert finding.evidence.numbers == (("beat_hz", 20.76),)


def test_where_no_hands_are_said_nobody_is_known_to_play_chords():
    assert findings(tempered_third_beats, ORGAN, *CHORUS, "tierce-1-3-5") == []
