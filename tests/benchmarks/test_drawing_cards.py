"""Drawing cards: 50 ms a card, a second for the twelve cards of a week."""

from registrations.cards.draw import draw_pdf, load_fonts
from registrations.cards.papers import DEFAULT_PAPER
from tests.builders import an_organ
from tests.registrations.sheets import a_sheet


def some_cards(count: int):
    organ = an_organ()
    drawn = sorted(organ.control_ids())
    changes = [drawn[one : one + 12] for one in range(5)]
    return tuple(a_sheet(*changes, organ=organ, right="great", feet="pedal") for _ in range(count))


def test_one_card(benchmark):
    load_fonts()

    benchmark(draw_pdf, some_cards(1), DEFAULT_PAPER, title="Cards")
    assert benchmark.stats["median"] < 0.05


def test_the_cards_of_a_week(benchmark):
    load_fonts()

    benchmark(draw_pdf, some_cards(12), DEFAULT_PAPER, title="Cards")
    assert benchmark.stats["median"] < 1
