"""How long the checks take on a large organ; run with ``--benchmark-only``."""

import pytest

from registrations.checks import run
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from tests.builders import a_combination, an_organ

FEET = ("16", "8", "8", "4", "2 2/3", "2", "1 3/5")
TONES = ("principal", "flute", "string")
NAMES = ("great", "swell", "choir", "solo", "pedal")


@pytest.fixture(scope="module")
def scene():
    """Eighty stops on five keyboards, half of them drawn, twelve couplers of fifty."""
    stops = [f"Stop{n} {FEET[n % 7]} ({TONES[n % 3]})" for n in range(15)] + ["Mixture 15.19.22"]
    couplers = [
        f"{source.title()} to {target.title()}{octave}"
        for source in NAMES
        for target in NAMES
        for octave in ("", " 4", " 16")
        if source != "pedal" and (source != target or octave)
    ]
    organ = an_organ(couplers=couplers, tremulants=["great"], **dict.fromkeys(NAMES, stops))
    drawn = [*[stop.id for _, stop in organ.stops()][::2], "great/tremulant"]
    return Scene(organ, a_combination(*drawn, *(one.id for one in organ.couplers[::5])))


def test_all_rules_on_eighty_stops(benchmark, scene):
    findings = benchmark(lambda: run(Scene(scene.organ, scene.combination)))

    assert findings


def test_all_remedies_on_eighty_stops(benchmark, scene):
    found = benchmark(lambda: remedies(Scene(scene.organ, scene.combination)))

    assert found
