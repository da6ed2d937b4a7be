import pytest

from instruments.compass import parse_key
from instruments.mixtures import Zone, breaks, lengths_at, ordinals_label, parse_ordinals
from instruments.pitch import parse_length, speaking_length
from instruments.zones import parse_zones
from tests.reference.tables import replay, rows

SHORTEST_PIPE = 1 / 16


def lengths(feet: str):
    return tuple(parse_length(one) for one in feet.split(","))


def composition(table: str, feet: int):
    return tuple(Zone(parse_key(row[0]), lengths(row[feet])) for row in rows(table))


@replay("start end feet counts shortest", "wikipedia_mixture.txt")
def test_a_fourniture_is_counted_and_its_shortest_pipe_known(start, end, feet, counts, shortest):
    pipes = [speaking_length(length, parse_key(end)) for length in lengths(feet)]

    assert ordinals_label(tuple(sorted(lengths(feet), reverse=True))) == counts
    assert parse_ordinals(counts) == lengths(feet)
    assert min(pipes) == pytest.approx(float(shortest), abs=0.00006)


def test_a_fourniture_never_passes_the_shortest_pipe_that_is_made():
    fourniture = composition("wikipedia_mixture.txt", feet=2)

    pipes = [
        speaking_length(length, key) for key in range(61) for length in lengths_at(fourniture, key)
    ]

    assert len(pipes) == 4 * 61
    assert min(pipes) == pytest.approx(SHORTEST_PIPE)


@replay("counts feet", "quint_mixture.txt")
def test_a_quint_mixture_is_counted_by_its_lengths(counts, feet):
    assert parse_ordinals(f"Mixture IV {counts}") == lengths(feet)
    assert ordinals_label(lengths(feet)) == counts


@replay("feet last", "highest_keys.txt")
def test_a_rank_that_does_not_break_ends_where_its_pipes_do(feet, last):
    pipes = [speaking_length(parse_length(feet), key) for key in range(73)]

    assert sum(pipe >= SHORTEST_PIPE - 1e-9 for pipe in pipes) == int(last)


def test_ranks_in_another_order_are_no_break():
    walcker = composition("walcker_1864.txt", feet=1)

    assert breaks(walcker) == (parse_key("c"), parse_key("c1"))


def test_real_lengths_are_the_nominal_ones_that_the_builder_wrote_beside_them():
    real = "\n".join(f"{key} {feet}" for key, feet in rows("walcker_1864_real.txt"))

    assert parse_zones(real, speaking=True) == composition("walcker_1864.txt", feet=1)
