"""How long the ladder, the compass and the partials take on a large organ.

Run with ``--benchmark-only``. None of it is on the way of a tap: the fold asks for it afterwards.
"""

import pytest

from registrations.charts import ladder, ladder_svg
from registrations.compasschart import compass_charts, compass_svg
from registrations.ladder import ladder_of
from registrations.listening import offers, sketch, sound_of
from tests.benchmarks.large import a_large_organ, half_of_it


@pytest.fixture(scope="module")
def organ():
    return a_large_organ()


def test_the_ladder_of_eighty_stops(benchmark, organ):
    drawn = half_of_it(organ)

    def draw():
        return ladder_svg(ladder(tuple(one.column for one in ladder_of(organ, drawn))))

    assert "<svg" in benchmark(draw)


def test_the_compass_of_five_keyboards(benchmark, organ):
    drawn = half_of_it(organ)

    charts = benchmark(lambda: [compass_svg(one) for one in compass_charts(organ, drawn)])
    assert len(charts) == 5


def test_the_partials_of_a_chord(benchmark, organ):
    drawn = half_of_it(organ)
    chord = offers(ladder_of(organ, drawn))[1]

    assert benchmark(lambda: sketch(sound_of(organ, drawn, chord)))
