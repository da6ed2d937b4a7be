import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import unison_off_silence
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    couplers=["Swell Unison Off", "Swell to Swell 4", "Swell to Great", "Great to Swell"],
)
OFF = ["swell/oboe-8", "swell-unison-off"]
SWELL = {"right": "swell", "left": "swell"}


def test_unison_off_with_an_octave_coupler_is_quiet():
    assert findings(unison_off_silence, ORGAN, *OFF, "swell-to-swell-4", **SWELL) == []


def test_unison_off_over_an_empty_division_is_quiet():
    drawn = ["principal-8", "great-to-swell", "swell-unison-off"]

    assert findings(unison_off_silence, ORGAN, *drawn, **SWELL) == []


def test_another_coupler_takes_nothing_away():
    assert findings(unison_off_silence, ORGAN, "swell/oboe-8", "swell-to-great", **SWELL) == []


@pytest.mark.parametrize("hands", [{}, {"right": "great", "left": "great"}])
def test_a_division_that_is_played_from_another_keyboard_is_meant_so(hands):
    assert findings(unison_off_silence, ORGAN, *OFF, "swell-to-great", **hands) == []


def test_a_keyboard_that_is_not_played_is_quiet():
    assert findings(unison_off_silence, ORGAN, "principal-8", *OFF, right="great") == []


@pytest.mark.parametrize("hands", [{}, SWELL])
def test_a_keyboard_that_falls_silent_is_a_fault(hands):
    (finding,) = findings(unison_off_silence, ORGAN, *OFF, **hands)

    assert finding.level is Level.FAULT
    assert finding.evidence.keyboards == ("swell",)
    assert finding.evidence.stops == ("swell/oboe-8",)
    assert finding.evidence.couplers == ("swell-unison-off",)
    assert finding.message == (
        "Swell Unison Off is drawn and no octave coupler: Oboe 8′ will not be heard "
        "on the Swell, which is silent."
    )


def test_a_keyboard_that_sounds_something_else_is_warned_of():
    drawn = ["principal-8", "great-to-swell"]
    (finding,) = findings(unison_off_silence, ORGAN, *OFF, *drawn, **SWELL)

    assert finding.level is Level.WARNING
    assert finding.message.endswith("will not be heard on the Swell.")
