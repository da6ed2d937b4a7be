"""How long a stop list takes to read; run with ``--benchmark-only``."""

from functools import cache

import pytest

from instruments.stoplist import lengths, ranks, read_stoplist, stopline

NAMES = (
    "Double Open Diapason 16", "Open Diapason 8", "Stopped Diapason 8", "Principal 4",
    "Wald Flute 4", "Twelfth 2 2/3", "Fifteenth 2", "Mixture IV 15.19.22.26", "Trumpet 8",
    "Clarion 4",
)  # fmt: skip
DIVISIONS = ("GREAT", "SWELL (enclosed)", "CHOIR", "PEDAL")
COUPLERS = "Couplers\nSwell to Great 16 8 4\nChoir to Great\nGreat to Pedal\nSwell to Pedal"
LIST = "\n".join(f"{one}\n" + "\n".join(NAMES) for one in DIVISIONS) + "\n" + COUPLERS


@cache
def remembering():
    kept = (lengths.figures_in, ranks.ranks_in, ranks.composition_in, stopline.read_stop)
    return tuple(one.cache_clear for one in kept)


def read_afresh():
    for forget in remembering():
        forget()
    return read_stoplist(LIST)


@pytest.mark.benchmark(min_rounds=10)
def test_forty_stops_are_read_in_fifty_milliseconds(benchmark):
    reading = benchmark(read_afresh)

    assert len(list(reading.organ.stops())) == 40
    assert reading.unread == ()
    if benchmark.stats:
        assert benchmark.stats.stats.min < 0.05
