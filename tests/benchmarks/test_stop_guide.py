"""The stop guide: a whole organ of forty stops in two seconds, one stop in a tenth of one."""

from dataclasses import replace
from itertools import count

from registrations.guide import entry_of, guide
from tests.builders import an_organ

FEET = ("16", "8", "8", "4", "2 2/3", "2", "1 3/5")
TONES = ("principal", "flute", "string")
NAMES = ("great", "swell", "choir", "pedal")
STOPS = [f"Stop{n} {FEET[n % 7]} ({TONES[n % 3]})" for n in range(9)] + ["Mixture 15.19.22"]
ORGAN = an_organ(
    couplers=["Swell to Great", "Choir to Great", "Swell to Choir", "Great to Pedal"],
    **dict.fromkeys(NAMES, STOPS),
)
numbers = count()


def a_new_organ():
    """Give an organ that nothing is remembered of."""
    return (replace(ORGAN, name=f"Organ {next(numbers)}"),), {}


def test_the_guide_of_forty_stops(benchmark):
    benchmark.pedantic(guide, setup=a_new_organ, rounds=5)

    assert benchmark.stats["median"] < 2


def test_the_guide_of_one_stop(benchmark):
    def one(organ):
        return entry_of(organ, "great/mixture-15-19-22")

    benchmark.pedantic(one, setup=a_new_organ, rounds=5)
    assert benchmark.stats["median"] < 0.1
