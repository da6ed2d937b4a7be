import dataclasses

from instruments.organ import Coupling
from registrations.checks.findings import Level
from registrations.checks.rules import coupler_to_idle_keyboard
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ()
CHAINED = dataclasses.replace(ORGAN, coupling=Coupling.CHAINED)
COUPLED = ["swell/oboe-8", "swell-to-great"]


def test_a_coupler_to_the_keyboard_under_the_hands_is_quiet():
    assert findings(coupler_to_idle_keyboard, ORGAN, *COUPLED, right="great", left="great") == []


def test_a_coupler_to_the_keyboard_under_one_hand_is_quiet():
    assert findings(coupler_to_idle_keyboard, ORGAN, *COUPLED, right="swell", left="great") == []


def test_where_nobody_has_said_who_plays_what_it_is_quiet():
    assert findings(coupler_to_idle_keyboard, ORGAN, *COUPLED) == []


def test_a_coupler_that_carries_nothing_is_another_fault():
    drawn = ["swell/oboe-8", "great-to-pedal"]

    assert findings(coupler_to_idle_keyboard, ORGAN, *drawn, right="swell") == []


def test_a_coupler_that_is_passed_on_to_the_feet_is_quiet():
    drawn = [*COUPLED, "great-to-pedal"]

    assert findings(coupler_to_idle_keyboard, CHAINED, *drawn, right="swell", feet="pedal") == []


def test_swell_to_great_with_both_hands_on_the_swell_is_found():
    (finding,) = findings(coupler_to_idle_keyboard, ORGAN, *COUPLED, right="swell", left="swell")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.stops == ("swell/oboe-8",)
    assert finding.evidence.couplers == ("swell-to-great",)
    assert finding.message == "Swell to Great brings Oboe 8′ to the Great, which nobody plays."


def test_a_pedal_coupler_without_feet_is_found():
    drawn = ["swell/oboe-8", "swell-to-pedal"]
    (finding,) = findings(coupler_to_idle_keyboard, ORGAN, *drawn, right="swell")

    assert finding.evidence.keyboards == ("pedal",)
