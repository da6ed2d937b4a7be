import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import tremulant_on_chorus
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Principal 8",
        "Octave 4",
        "Voce Umana 8 (principal undulating)",
        "Flute 8 (flute)",
        "Flute 4 (flute)",
        "Trumpet 8 (reed full-length)",
        "Vox Humana 8 (reed short)",
        "Mixture 19.22",
        "Cornet 1.8.12.15.17",
    ],
    swell=["Oboe 8 (reed narrow-conical)"],
    tremulants=["great", "swell"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["principal-8", "octave-4"],
        ["great/tremulant"],
        ["great/tremulant", "flute-8", "flute-4"],
        ["great/tremulant", "vox-humana-8", "flute-8"],
        ["great/tremulant", "principal-8"],
        ["great/tremulant", "principal-8", "voce-umana-8"],
        ["great/tremulant", "cornet-1-8-12-15-17"],
        ["swell/tremulant", "principal-8", "octave-4"],
    ],
)
def test_solo_sounds_and_steady_wind_are_quiet(drawn):
    assert findings(tremulant_on_chorus, ORGAN, *drawn) == []


def test_a_chorus_that_no_hand_plays_is_quiet():
    drawn = ["great/tremulant", "principal-8", "octave-4", "swell/oboe-8"]

    assert findings(tremulant_on_chorus, ORGAN, *drawn, right="swell") == []


@pytest.mark.parametrize(
    "drawn", [["principal-8", "octave-4"], ["mixture-19-22"], ["trumpet-8", "flute-8"]]
)
def test_a_shaken_chorus_is_found(drawn):
    (finding,) = findings(tremulant_on_chorus, ORGAN, "great/tremulant", *drawn)

    assert finding.level is Level.WARNING
    assert finding.evidence.tremulants == ("great/tremulant",)
    assert finding.evidence.keyboards == ("great",)


def test_only_the_chorus_is_named():
    drawn = ["great/tremulant", "trumpet-8", "flute-8"]
    (finding,) = findings(tremulant_on_chorus, ORGAN, *drawn)

    assert finding.message == (
        "The tremulant of the Great shakes Trumpet 8′: a chorus wants steady wind."
    )
