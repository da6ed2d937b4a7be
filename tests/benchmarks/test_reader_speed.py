"""How long a stop list takes to read; run with ``--benchmark-only``."""

import sys

from instruments.stoplist import read_stoplist

NAMES = (
    "Double Open Diapason 16", "Open Diapason 8", "Stopped Diapason 8", "Principal 4",
    "Wald Flute 4", "Twelfth 2 2/3", "Fifteenth 2", "Mixture IV 15.19.22.26", "Trumpet 8",
    "Clarion 4",
)  # fmt: skip
DIVISIONS = ("GREAT", "SWELL (enclosed)", "CHOIR", "PEDAL")
COUPLERS = "Couplers\nSwell to Great 16 8 4\nChoir to Great\nGreat to Pedal\nSwell to Pedal"
LIST = "\n".join(f"{one}\n" + "\n".join(NAMES) for one in DIVISIONS) + "\n" + COUPLERS
READING = ("instruments.stoplist", "instruments.lexicon", "instruments.spelling")


def forget_what_was_read():
    """Clear what is remembered of texts, and leave the tables that are loaded once."""
    for name, module in list(sys.modules.items()):
        if name.startswith(READING):
            for one in vars(module).values():
                parameters = getattr(one, "cache_parameters", dict)()
                if parameters.get("maxsize") is not None:
                    one.cache_clear()


def test_forty_stops_are_read_in_fifty_milliseconds(benchmark):
    read_stoplist(LIST)
    reading = benchmark.pedantic(
        read_stoplist, (LIST,), setup=forget_what_was_read, rounds=20, iterations=1
    )

    assert len(list(reading.organ.stops())) == 40
    assert reading.unread == ()
    if benchmark.stats:
        assert benchmark.stats.stats.min < 0.05
