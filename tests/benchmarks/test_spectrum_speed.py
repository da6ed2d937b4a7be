"""What a large organ's spectra cost, each as a share of another in the same run.

Run with ``--benchmark-only``; the shares are asserted, the milliseconds only shown.
"""

from time import perf_counter

import pytest

from registrations.roughness import roughness
from registrations.spectrum import compass_spectra, spectrum
from registrations.standout import stand_outs
from tests.benchmarks.large import a_large_organ, half_of_it


@pytest.fixture(scope="module")
def drawn():
    organ = a_large_organ()
    return organ, half_of_it(organ)


def seconds(work, times: int = 20) -> float:
    """Give the least time that a piece of work took."""
    took = []
    for _ in range(times):
        start = perf_counter()
        work()
        took.append(perf_counter() - start)
    return min(took)


def test_the_whole_compass_costs_less_than_a_tenth_of_its_keys_one_by_one(benchmark, drawn):
    found = benchmark(compass_spectra, *drawn, "great")

    one_by_one = seconds(lambda: [spectrum(*drawn, "great", key) for key in found.keys], times=3)
    share = seconds(lambda: compass_spectra(*drawn, "great")) / one_by_one
    benchmark.extra_info["share of the keys one by one"] = round(share, 4)
    assert share < 0.1


def test_what_stands_out_costs_less_than_ten_spectra(benchmark, drawn):
    benchmark(stand_outs, *drawn, "great", 24)

    one = seconds(lambda: spectrum(*drawn, "great", 24))
    share = seconds(lambda: stand_outs(*drawn, "great", 24)) / one
    benchmark.extra_info["spectra"] = round(share, 2)
    assert share < 10


def test_the_roughness_of_a_chord_costs_less_than_ten_of_its_spectra(benchmark, drawn):
    keys = (24, 28, 31, 36)
    chord = spectrum(*drawn, "great", *keys)
    benchmark(roughness, chord)

    whole = seconds(lambda: spectrum(*drawn, "great", *keys))
    share = seconds(lambda: roughness(chord)) / whole
    benchmark.extra_info["spectra of the chord"] = round(share, 2)
    assert share < 10
