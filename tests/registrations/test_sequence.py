from pathlib import Path

import pytest

from registrations.checks import RULES, sequences
from registrations.checks.sequence import SEQUENCE_RULES, run_registration
from registrations.registration import Registration
from tests.builders import an_organ
from tests.registrations.sequences.helpers import a_change

ORGAN = an_organ()


def found(*changes, **given):
    run = run_registration(Registration(ORGAN, changes), **given)
    return [[finding.rule for finding in one] for one in run]


def test_a_registration_without_changes_has_nothing_to_find():
    assert found() == []


def test_changes_that_differ_are_quiet():
    assert found(a_change("great/trumpet-8"), a_change("great/principal-4")) == [[], []]


def test_each_change_has_its_own_findings_faults_first():
    first, second = a_change("great/tuba-8"), a_change("great/tuba-8", cue="Verse 2")

    assert found(first, second) == [
        ["stop-not-on-organ"],
        ["stop-not-on-organ", "change-does-nothing"],
    ]


def test_how_many_moves_fit_can_be_said():
    changes = a_change("great/trumpet-8"), a_change("great/principal-4")

    assert found(*changes, most_by_hand=1) == [[], ["too-many-moves"]]


def test_every_module_in_the_room_is_in_the_list():
    modules = {path.stem for path in Path(sequences.__file__).parent.glob("[a-z]*.py")}

    assert modules == {rule.NAME.replace("-", "_") for rule in SEQUENCE_RULES}


def test_no_two_rules_have_one_name():
    names = [rule.NAME for rule in (*RULES, *SEQUENCE_RULES)]

    assert len(set(names)) == len(names)


@pytest.mark.parametrize("rule", SEQUENCE_RULES, ids=lambda rule: rule.NAME)
def test_every_rule_tells_its_fault_why_it_matters_and_who_says_so(rule):
    fault, _, rest = rule.__doc__.partition("\n\n")

    assert fault.endswith(".")
    assert rest.startswith("Why it matters: ")
    assert rule.SOURCES
    assert rule.EXAMPLE
