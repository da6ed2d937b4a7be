"""How long the checks take on a large organ; run with ``--benchmark-only``."""

import pytest

from registrations.checks import run
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from tests.benchmarks.large import a_large_organ, half_of_it


@pytest.fixture(scope="module")
def scene():
    organ = a_large_organ()
    return Scene(organ, half_of_it(organ))


def test_all_rules_on_eighty_stops(benchmark, scene):
    findings = benchmark(lambda: run(Scene(scene.organ, scene.combination)))

    assert findings


def test_all_remedies_on_eighty_stops(benchmark, scene):
    found = benchmark(lambda: remedies(Scene(scene.organ, scene.combination)))

    assert found
