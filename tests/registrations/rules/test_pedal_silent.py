import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import pedal_silent
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    pedal=["Bourdon 16"],
    couplers=["Great to Pedal", "Swell to Pedal"],
    tremulants=["great"],
)


@pytest.mark.parametrize(
    ("drawn", "hands"),
    [
        (["principal-8", "pedal/bourdon-16"], {"right": "great", "feet": "pedal"}),
        (["principal-8", "great-to-pedal"], {"right": "great", "feet": "pedal"}),
        (["principal-8"], {"right": "great"}),
        (["principal-8"], {"feet": "great"}),
        (["principal-8"], {"right": "great", "feet": "echo"}),
        (["principal-8"], {}),
        ([], {"feet": "pedal"}),
    ],
)
def test_feet_with_something_under_them_and_feet_at_rest_are_quiet(drawn, hands):
    assert findings(pedal_silent, ORGAN, *drawn, **hands) == []


def test_feet_on_another_keyboard_are_not_on_the_pedals():
    assert findings(pedal_silent, ORGAN, "principal-8", feet="swell") == []


def test_feet_on_silent_pedals_are_a_fault():
    (finding,) = findings(pedal_silent, ORGAN, "principal-8", right="great", feet="pedal")

    assert finding.level is Level.FAULT
    assert finding.evidence.keyboards == ("pedal",)
    assert finding.message == "The feet are on the Pedal, where nothing sounds."


@pytest.mark.parametrize("control", ["swell-to-pedal", "great/tremulant"])
def test_a_control_without_pipes_does_not_help(control):
    drawn = ["principal-8", control]

    assert len(findings(pedal_silent, ORGAN, *drawn, right="great", feet="pedal")) == 1
