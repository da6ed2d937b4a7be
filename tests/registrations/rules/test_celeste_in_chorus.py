import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import celeste_in_chorus
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Principal 8",
        "Octave 4",
        "Salicional 8 (string)",
        a_stop("Celeste 8 (string undulating)", compass=Compass(12, 60)),
        "Unda Maris 8 (flute undulating)",
        "Flute 4 (flute)",
        "Nazard 2 2/3 (flute)",
        "Trumpet 8 (reed full-length)",
        "Oboe 8 (reed narrow-conical)",
        "Mixture 19.22",
        "Cornet 1.8.12.15.17",
    ],
    swell=["Celeste 8 (string undulating)"],
    couplers=["Swell to Great"],
)
CHORUS = ["principal-8", "octave-4"]


@pytest.mark.parametrize(
    "drawn",
    [
        ["celeste-8"],
        ["salicional-8", "celeste-8"],
        ["salicional-8", "celeste-8", "flute-4"],
        ["principal-8", "celeste-8"],
        ["celeste-8", "oboe-8"],
        [*CHORUS, "mixture-19-22"],
        [*CHORUS, "swell/celeste-8"],
    ],
)
def test_a_celeste_with_soft_stops_or_apart_is_quiet(drawn):
    assert findings(celeste_in_chorus, ORGAN, *drawn) == []


@pytest.mark.parametrize(
    "drawn", [CHORUS, ["mixture-19-22"], ["nazard-2-2-3"], ["trumpet-8"], ["cornet-1-8-12-15-17"]]
)
def test_a_celeste_in_a_chorus_is_found(drawn):
    (finding,) = findings(celeste_in_chorus, ORGAN, "celeste-8", *drawn)

    assert finding.level is Level.WARNING
    assert finding.evidence.keys == (12, 60)
    assert finding.evidence.stops == ("great/celeste-8", *(f"great/{name}" for name in drawn))


def test_a_celeste_coupled_to_a_chorus_is_found_there():
    (finding,) = findings(celeste_in_chorus, ORGAN, "swell/celeste-8", *CHORUS, "swell-to-great")

    assert finding.message == (
        "On the Great, Celeste 8′ is out of tune with Principal 8′ and Octave 4′."
    )


def test_two_undulating_stops_are_one_finding():
    drawn = ["celeste-8", "unda-maris-8", "mixture-19-22"]
    (finding,) = findings(celeste_in_chorus, ORGAN, *drawn)

    assert "Unda Maris 8′ and Celeste 8′ are out of tune" in finding.message
