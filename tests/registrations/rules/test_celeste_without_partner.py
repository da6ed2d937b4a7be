from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import celeste_without_partner
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        "Dulciana 8 (string)",
        "Octave 4",
        "Contra Gamba 16 (string)",
        "Flute 4 (flute)",
        "Piccolo 2 (flute)",
        a_stop("Celeste 8", "string undulating", compass=Compass(12, 60)),
        "Unda Maris 8 (flute undulating)",
        "Celeste Octave 4 (string undulating)",
        a_stop("Viols 8", "string undulating", ranks=2),
        a_stop("Treble Dulciana 8", "string", compass=Compass(36, 60)),
    ],
    swell=["Voix Celeste 8 (string undulating)"],
    couplers=["Great to Great 4", "Swell to Great"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["celeste-8", "dulciana-8"],
        ["unda-maris-8", "viols-8"],
        ["celeste-8", "flute-4"],
        ["celeste-8", "contra-gamba-16"],
        ["celeste-8", "dulciana-8", "great-to-great-4"],
        ["viols-8"],
        ["octave-4"],
        [],
    ],
)
def test_a_celeste_with_a_soft_stop_is_quiet(drawn):
    assert findings(celeste_without_partner, ORGAN, *drawn) == []


def test_a_celeste_that_a_coupler_brings_to_its_partner_is_quiet():
    drawn = ["dulciana-8", "swell/voix-celeste-8", "swell-to-great"]

    assert findings(celeste_without_partner, ORGAN, *drawn) == []


def test_a_celeste_alone_is_found_from_where_it_begins():
    (finding,) = findings(celeste_without_partner, ORGAN, "celeste-8")

    assert finding.level is Level.WARNING
    assert finding.evidence.stops == ("great/celeste-8",)
    assert finding.evidence.keys == (12, 60)
    assert finding.evidence.lengths == (Fraction(8),)
    assert finding.message == (
        "On the Great, from c to c4, Celeste 8′ has no partner at 8′ to beat against: "
        "it is only out of tune."
    )


@pytest.mark.parametrize("other", ["octave-4", "piccolo-2", "celeste-octave-4"])
def test_neither_a_principal_nor_another_celeste_an_octave_off_is_a_partner(other):
    found = findings(celeste_without_partner, ORGAN, "unda-maris-8", other)

    assert "great/unda-maris-8" in [one.evidence.stops[0] for one in found]


def test_a_partner_in_the_treble_leaves_the_bass_alone():
    (finding,) = findings(celeste_without_partner, ORGAN, "unda-maris-8", "treble-dulciana-8")

    assert finding.evidence.keys == (0, 35)


def test_under_a_hand_the_division_it_lends_to_is_no_excuse():
    drawn = ["dulciana-8", "swell/voix-celeste-8", "swell-to-great"]
    (finding,) = findings(celeste_without_partner, ORGAN, *drawn, right="swell")

    assert finding.evidence.keyboards == ("swell",)
