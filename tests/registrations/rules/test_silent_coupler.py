import dataclasses

import pytest

from instruments.compass import Compass
from instruments.organ import Coupling
from registrations.checks.findings import Level
from registrations.checks.rules import silent_coupler
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8", a_stop("Bass 8", compass=Compass(0, 11))],
    pedal=["Bourdon 16"],
    couplers=[
        "Swell to Great",
        "Swell to Great 4",
        "Great to Pedal",
        "Swell to Swell 4",
        "Swell to Swell 16",
        "Swell Unison Off",
    ],
)


def with_coupling(coupling):
    return dataclasses.replace(ORGAN, coupling=coupling)


@pytest.mark.parametrize(
    "drawn",
    [
        [],
        ["principal-8"],
        ["swell/oboe-8", "swell-to-great"],
        ["swell/oboe-8", "swell-to-great", "swell-to-great-4"],
        ["principal-8", "swell-unison-off"],
    ],
)
def test_a_coupler_that_carries_a_stop_and_a_unison_off_are_quiet(drawn):
    assert findings(silent_coupler, ORGAN, *drawn) == []


def test_a_coupler_that_carries_only_what_is_coupled_further_is_quiet_where_keys_move():
    drawn = ["swell/oboe-8", "swell-to-great", "great-to-pedal"]

    assert findings(silent_coupler, with_coupling(Coupling.CHAINED), *drawn) == []


def test_a_coupler_over_an_empty_division_is_found():
    (finding,) = findings(silent_coupler, ORGAN, "principal-8", "swell-to-great")

    assert finding.level is Level.WARNING
    assert finding.evidence.couplers == ("swell-to-great",)
    assert finding.message == (
        "Swell to Great is drawn but carries nothing: no stop of the Swell sounds through it."
    )


def test_couplers_do_not_carry_through_on_an_electric_action():
    found = findings(silent_coupler, ORGAN, "swell/oboe-8", "swell-to-great", "great-to-pedal")

    assert [finding.evidence.couplers for finding in found] == [("great-to-pedal",)]


def test_a_coupler_to_keys_without_pipes_is_found():
    top = a_stop("Top 8", compass=Compass(0, 5))
    organ = an_organ(great=[top], couplers=["Great to Great 4"])

    assert len(findings(silent_coupler, organ, "top-8", "great-to-great-4")) == 1


def test_read_through_a_unison_off_leaves_nothing_to_carry():
    drawn = ["swell/oboe-8", "swell-to-great", "swell-unison-off"]
    (finding,) = findings(silent_coupler, with_coupling(Coupling.OCTAVES), *drawn)

    assert finding.evidence.couplers == ("swell-to-great",)
