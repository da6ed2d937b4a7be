from pathlib import Path

import pytest

from registrations.checks import RULES, rules, run
from registrations.checks.findings import Level
from registrations.checks.scene import Scene
from tests.builders import a_combination, an_organ

ORGAN = an_organ(tremulants=["great"])


def found(*drawn, **hands):
    return [(one.level, one.rule) for one in run(Scene(ORGAN, a_combination(*drawn, **hands)))]


def test_nothing_drawn_finds_nothing():
    assert found() == []


def test_a_well_built_chorus_finds_nothing():
    great = ("open-diapason-8", "principal-4", "twelfth-2-2-3", "fifteenth-2", "mixture-19-22-26")
    pedal = ("pedal/bourdon-16", "pedal/bass-flute-8", "great-to-pedal")

    assert found(*(f"great/{name}" for name in great), *pedal) == []


def test_faults_come_before_warnings_and_warnings_before_advice():
    drawn = ("great/open-diapason-8", "great/twelfth-2-2-3", "swell-to-great")

    assert found(*drawn, right="great", left="swell") == [
        (Level.FAULT, "silent-keyboard"),
        (Level.WARNING, "silent-coupler"),
        (Level.ADVICE, "gap-below-mutation"),
    ]


def test_every_module_in_the_rules_room_is_in_the_list():
    modules = {path.stem for path in Path(rules.__file__).parent.glob("[a-z]*.py")}

    assert modules == {rule.NAME.replace("-", "_") for rule in RULES}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.NAME)
def test_every_rule_tells_its_fault_why_it_matters_and_who_says_so(rule):
    fault, _, rest = rule.__doc__.partition("\n\n")

    assert fault.endswith(".")
    assert rest.startswith("Why it matters: ")
    assert rule.SOURCES
    assert rule.EXAMPLE
