from registrations.checks.findings import Level
from registrations.checks.sequences import stop_not_on_organ
from tests.builders import an_organ
from tests.registrations.sequences.helpers import a_change, findings

ORGAN = an_organ(tremulants=["swell"])


def test_stops_couplers_and_tremulants_of_the_organ_are_quiet():
    change = a_change("great/trumpet-8", "swell-to-great", "swell/tremulant")

    assert findings(stop_not_on_organ, ORGAN, change) == []


def test_nothing_drawn_is_quiet():
    assert findings(stop_not_on_organ, ORGAN, a_change()) == []


def test_a_stop_that_was_taken_off_is_a_fault():
    (finding,) = findings(stop_not_on_organ, ORGAN, a_change("great/tuba-8", "great/trumpet-8"))

    assert finding.level is Level.FAULT
    assert finding.evidence.stops == ("great/tuba-8",)
    assert finding.message == "“great/tuba-8” is drawn here but not on this organ."


def test_several_are_named_together():
    (finding,) = findings(stop_not_on_organ, ORGAN, a_change("solo/tuba-8", "choir/viol-8"))

    assert finding.message.startswith("“choir/viol-8” and “solo/tuba-8” are drawn here")
