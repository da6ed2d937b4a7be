"""Reading stop lists: 50 ms for forty stops, two seconds for the longest text of noise."""

import random

import pytest

from instruments.stoplist import StoplistError, read_stoplist
from tests.reference.scoring import printed_lists

FORTY = next(one.text for one in printed_lists() if one.title == "german_modern")
LONGEST = 200_000


def noise(letters: str) -> str:
    chance = random.Random(7)
    return "".join(chance.choice(letters) for _ in range(LONGEST))


NOISES = {
    "letters": noise("abcdefghijklmnopqrstuvwxyz      \n"),
    "figures": noise("0123456789 ''/.,;-\n"),
    "half stops": ("Open Quaxon 8 and, Diapason; III 2 2/3 to Swell | " * 4200)[:LONGEST],
    "one line of words": ("open diapason swell to great principal " * 5200)[:LONGEST],
    "brackets": "(" * LONGEST,
    "spaces": "Principal 8" + " " * (LONGEST - 20),
    "tags": ("<td>" * 50_000)[:LONGEST],
}


def read_or_refuse(text: str) -> None:
    try:
        read_stoplist(text)
    except StoplistError:
        return


def test_forty_stops(benchmark):
    read_stoplist(FORTY)

    benchmark(read_stoplist, FORTY)
    assert benchmark.stats["median"] < 0.05


@pytest.mark.parametrize("kind", NOISES)
def test_noise(benchmark, kind):
    benchmark.pedantic(read_or_refuse, args=(NOISES[kind],), rounds=1)

    assert benchmark.stats["max"] < 2
