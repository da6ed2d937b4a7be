"""How well stop lists are read: forty lists of our own with the truth beside each.

Run with ``-s`` to see the figures, which DEVELOPERS.md quotes.
"""

import pytest

from tests.reference.scoring import Score, printed_lists, score

LISTS = printed_lists()
FIGURES = (
    ("recall", "found stops", "true stops"),
    ("precision", "found stops", "read stops"),
    ("pitch", "pitches right", "found stops"),
    ("family", "families right", "found stops"),
    ("couplers", "couplers right", "all couplers"),
    ("halves and compasses", "extras right", "found stops"),
)


@pytest.fixture(scope="module")
def totals():
    sums = {"plain": Score(), "flattened": Score(), "headings lost": Score(), "all": Score()}
    for printed in LISTS:
        one = score(printed)
        sums[printed.shape].add(one)
        sums["all"].add(one)
        for fault in one.faults:
            print(f"{printed.title}: {fault}")
    for shape, total in sums.items():
        told = [f"{name} {100 * total.share(*parts):.1f} %" for name, *parts in FIGURES]
        lost = f"lost {total.counts['lost lines']}, unread {total.counts['unread lines']}"
        print(f"{shape}: {total.counts['true stops']} stops, {', '.join(told)}, {lost} lines")
    return sums


def test_there_are_lists_enough():
    assert len(LISTS) >= 30


@pytest.mark.parametrize(("shape", "aim"), [("plain", 0.98), ("flattened", 0.9)])
def test_stops_are_found_and_none_invented(totals, shape, aim):
    assert totals[shape].share("found stops", "true stops") > aim
    assert totals[shape].share("found stops", "read stops") > aim


@pytest.mark.parametrize(
    ("right", "of", "aim"),
    [
        ("pitches right", "found stops", 0.99),
        ("families right", "found stops", 0.95),
        ("couplers right", "all couplers", 0.95),
        ("extras right", "found stops", 0.95),
    ],
)
def test_what_is_found_is_right(totals, right, of, aim):
    assert totals["all"].share(right, of) >= aim


def test_no_line_is_lost(totals):
    assert totals["all"].counts["lost lines"] == 0
