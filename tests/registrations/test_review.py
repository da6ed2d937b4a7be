from registrations.checks.findings import Finding, Level
from registrations.combination import Music
from registrations.registration import Change, Registration
from registrations.review import Tally, findings_at, findings_of, review, tally
from tests.builders import a_combination, an_organ

QUIET = a_combination("great/open-diapason-8", "great/principal-4", right="great", left="great")
LOUDER = QUIET.moved(frozenset({"great/fifteenth-2"}), frozenset())
BARE_TWELFTH = a_combination("great/twelfth-2-2-3", right="great", left="great")


def test_a_registration_in_order_has_nothing_found():
    changes = (Change("Before it begins", QUIET), Change("Verse 2", LOUDER))

    assert review(Registration(an_organ(), changes)) == ((), ())


def test_a_registration_without_changes_has_nothing_to_find():
    assert review(Registration(an_organ())) == ()


def test_findings_stand_with_the_change_they_are_about():
    changes = (Change("Before it begins", QUIET), Change("Verse 2", BARE_TWELFTH))

    before, verse = review(Registration(an_organ(), changes))

    assert before == ()
    assert "mutation-alone" in {finding.rule for finding in verse}


def test_what_is_said_of_the_order_stands_with_the_change_too_faults_first():
    lost = BARE_TWELFTH.moved(frozenset({"great/tuba-8"}), frozenset())
    changes = (Change("Verse 1", QUIET), Change("Verse 2", lost), Change("Verse 3", lost))

    _, verse, again = review(Registration(an_organ(), changes))

    assert verse[0].rule == "stop-not-on-organ"
    assert again[-1].rule == "change-does-nothing"
    assert findings_at(Registration(an_organ(), changes), 1) == verse


def test_the_same_combination_is_worked_out_once():
    found = findings_of(an_organ(), BARE_TWELFTH, Music())

    assert findings_of(an_organ(), BARE_TWELFTH, Music()) is found


def test_findings_are_counted_by_level():
    found = [Finding("x", level, "") for level in (Level.WARNING, Level.FAULT, Level.WARNING)]

    assert tally(found) == Tally(faults=1, warnings=2, advice=0)


def test_nothing_found_is_nothing_to_tell():
    assert not tally(())
    assert tally([Finding("x", Level.ADVICE, "")])
