import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import silent_keyboard
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"], swell=["Oboe 8"], pedal=["Bourdon 16"], couplers=["Great to Pedal"]
)


@pytest.mark.parametrize(
    ("drawn", "hands"),
    [
        (["principal-8"], {}),
        (["principal-8"], {"right": "great", "left": "great"}),
        (["principal-8", "swell/oboe-8"], {"right": "swell", "left": "great"}),
        (["principal-8", "great-to-pedal"], {"feet": "pedal"}),
        ([], {"right": "great"}),
        (["principal-8"], {"right": "great", "left": "echo"}),
    ],
)
def test_hands_where_something_sounds_and_an_empty_console_are_quiet(drawn, hands):
    assert findings(silent_keyboard, ORGAN, *drawn, **hands) == []


def test_a_hand_on_a_silent_keyboard_is_found():
    (finding,) = findings(silent_keyboard, ORGAN, "principal-8", right="swell", left="great")

    assert finding.level is Level.FAULT
    assert finding.evidence.keyboards == ("swell",)
    assert finding.message == "The right hand is on the Swell, where nothing sounds."


def test_feet_on_silent_pedals_are_another_fault():
    assert findings(silent_keyboard, ORGAN, "principal-8", right="great", feet="pedal") == []


def test_feet_on_a_silent_manual_are_found():
    (finding,) = findings(silent_keyboard, ORGAN, "principal-8", right="great", feet="swell")

    assert finding.message == "The feet are on the Swell, where nothing sounds."


def test_a_hand_on_silent_pedals_is_found():
    (finding,) = findings(silent_keyboard, ORGAN, "principal-8", left="pedal", feet="pedal")

    assert finding.message == "The left hand is on the Pedal, where nothing sounds."


def test_the_left_hand_is_one_hand():
    (finding,) = findings(silent_keyboard, ORGAN, "principal-8", right="great", left="swell")

    assert finding.message == "The left hand is on the Swell, where nothing sounds."


def test_both_hands_on_one_silent_keyboard_are_one_finding():
    (finding,) = findings(silent_keyboard, ORGAN, "principal-8", right="swell", left="swell")

    assert finding.message.startswith("The right hand and the left hand are on the Swell")


def test_a_coupler_alone_leaves_the_keyboard_silent():
    assert len(findings(silent_keyboard, ORGAN, "great-to-pedal", right="great")) == 1
