"""Layout is judged by its values: sizes, places, and what stands on which page."""

import re
from collections import Counter
from collections.abc import Iterable
from itertools import chain, cycle, islice, pairwise
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from registrations.cards.content import Sheet, service_sheets
from registrations.cards.draw import load_fonts
from registrations.cards.fonts import POINT
from registrations.cards.layout import lay_out
from registrations.cards.pages import FOOT, TEXT, Bar, Page, Text
from registrations.cards.papers import PAPERS
from services.order import Piece
from tests.builders import an_organ
from tests.registrations.sheets import HYMN, a_registration, a_service, a_sheet, an_item

EVERY_PAPER = pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
FULL_GREAT = ("great/open-diapason-8", "great/principal-4", "great/twelfth-2-2-3")
LOREM = "Almighty everlasting Omnipotens sempiterne " * 5


def pages_of(*sheets: Sheet, paper: str = "a5") -> tuple[Page, ...]:
    return lay_out(sheets, PAPERS[paper], load_fonts())


def texts(page: Page) -> list[Text]:
    return [mark for mark in page.marks if isinstance(mark, Text)]


def said(*pages: Page) -> str:
    return " ".join(text.text for page in pages for text in texts(page))


def box(mark: Text | Bar) -> tuple[float, float, float, float]:
    """Give left, top, right and bottom of what a mark inks."""
    if isinstance(mark, Bar):
        return mark.x, mark.y, mark.x + mark.width, mark.y + mark.height
    wide, size = load_fonts().width(mark.text, mark.face, mark.size), mark.size * POINT
    return mark.x, mark.y - 0.75 * size, mark.x + wide, mark.y + 0.28 * size


def outside(page: Page, margin: float) -> list[Text | Bar]:
    """Give the marks that reach into the margin or beyond the page."""
    right, bottom = page.width - margin, page.height - margin
    edges = [(mark, box(mark)) for mark in page.marks]
    return [
        mark
        for mark, (x, y, end, foot) in edges
        if x < margin - 0.01 or y < margin - 0.01 or end > right + 0.01 or foot > bottom + 0.01
    ]


def overlapping(page: Page) -> list[tuple[str, str]]:
    """Give the pairs of texts that stand on each other; ascenders may reach into a line above."""
    boxes = [(text, box(text)) for text in texts(page)]
    return [
        (one.text, other.text)
        for place, (one, (x, _, end, _)) in enumerate(boxes)
        for other, (left, _, right, _) in boxes[place + 1 :]
        if x < right - 0.01
        and left < end - 0.01
        and abs(one.y - other.y) < 0.7 * min(one.size, other.size) * POINT
    ]


@EVERY_PAPER
def test_margins_are_wide_enough_for_a_printer_and_a_thumb(paper):
    assert paper.margin >= (12 if paper.width > 200 else 8)


@EVERY_PAPER
def test_a_short_card_is_one_page_within_its_margins(paper):
    (page,) = lay_out((a_sheet(FULL_GREAT, right="great"),), paper, load_fonts())

    assert outside(page, paper.margin) == []
    assert overlapping(page) == []


def test_only_the_foot_is_smaller_than_fourteen_points():
    (page,) = pages_of(a_sheet(FULL_GREAT))

    small = [text for text in texts(page) if text.size < TEXT]
    assert {text.size for text in small} == {FOOT}
    assert min(text.y for text in small) > page.height - 8 - 15


def test_a_heading_says_piece_key_verses_player_and_organ():
    heading = said(pages_of(a_sheet(()))[0])

    for part in ("1 · Offertory hymn", HYMN.title, HYMN.credit, "A♭", "4 verses", "Ida Marsh"):
        assert part in heading


def test_a_bare_letter_is_called_a_key():
    sheet = a_sheet((), item=an_item(piece=Piece("Toccata", key="F"), label="", player=""))

    heading = said(pages_of(sheet)[0])
    assert "Key F" in heading
    assert "verses" not in heading


def test_the_foot_catches_an_old_card():
    (page,) = pages_of(a_sheet(()))

    foot = " ".join(text.text for text in texts(page) if text.size == FOOT)
    for part in ("Sheet ", "Sunday 29 November 2026, 9:05", "St Osyth", "An organ", "Ida Marsh"):
        assert part in foot
    assert "Page 1 of 1" in said(page)


def test_a_card_without_a_player_says_so_and_an_order_does_not():
    item = an_item(player="")
    order, card = service_sheets(a_service(item), {})

    assert "player not named" in said(*pages_of(card))
    assert "player not named" not in said(*pages_of(order))


def test_an_order_of_service_numbers_its_items():
    items = an_item(1), an_item(2, label="", piece=Piece("Toccata", composer="Widor"), player="")
    order = said(*pages_of(service_sheets(a_service(*items), {1: a_registration(())})[0]))

    assert "Advent Sunday St Osyth 1 Love divine" in order
    assert "Ida Marsh, An organ" in order
    assert "2 Toccata Widor" in order


def test_an_item_without_a_registration_says_so():
    card = service_sheets(a_service(an_item()), {})[1]

    assert "No registration has been written for this item." in said(*pages_of(card))


def test_the_first_change_is_set_before_and_has_no_signs():
    words = said(*pages_of(a_sheet(FULL_GREAT)))

    assert "Set before it begins." in words
    assert "Draw" not in words
    assert "Put in" not in words


@EVERY_PAPER
def test_moves_are_told_by_sign_and_word(paper):
    sheet = a_sheet(
        ("great/principal-4", "great/fifteenth-2"), ("great/principal-4", "swell/oboe-8")
    )
    words = said(*lay_out((sheet,), paper, load_fonts()))

    assert "+ Draw Swell 8′ Oboe" in words
    assert "− Put in Great 2′ Fifteenth" in words


def test_a_change_without_moves_says_so():
    assert "Nothing to draw or put in." in said(*pages_of(a_sheet(FULL_GREAT, FULL_GREAT)))


def test_an_empty_combination_says_so():
    assert "Nothing is drawn." in said(*pages_of(a_sheet(())))


def test_a_change_without_a_cue_still_has_its_number():
    assert " 1 Set before it begins." in said(*pages_of(a_sheet(FULL_GREAT, cue="")))


def test_a_change_is_not_divided_if_the_next_page_holds_it():
    first, second, *_ = pages_of(a_sheet(*[FULL_GREAT] * 9))

    assert "continues" in said(first)
    assert f"{HYMN.title}, continued" in said(second)
    assert "continued" not in said(second).replace(f"{HYMN.title}, continued", "")


def test_a_change_taller_than_a_page_is_divided_between_divisions_and_says_so():
    stops = {name: [f"Rank x{one} 8" for one in range(9)] for name in ("great", "swell", "pedal")}
    organ = an_organ(**stops)
    pages = pages_of(a_sheet(organ.control_ids(), organ=organ), paper="a6")

    assert all("Verse 1, continued" in said(page) for page in pages[1:])
    assert [said(page).count("Rank") for page in pages] == [0, 9, 9, 9]


def test_a_division_taller_than_a_page_is_divided_and_says_so():
    organ = an_organ(great=[f"Rank x{one} 8" for one in range(60)])

    pages = pages_of(a_sheet(organ.control_ids(), organ=organ, cue=""), paper="a6")
    assert all("Great, continued" in said(page) for page in pages[1:])
    assert "1 continued" in said(pages[1])


def test_moves_that_are_taller_than_a_page_go_on_under_the_number_of_their_change():
    organ = an_organ(great=[f"Rank x{one} 8" for one in range(60)])
    pages = pages_of(a_sheet((), organ.control_ids(), organ=organ, cue="Verse"), paper="a6")

    assert "2 Verse!, continued" in said(pages[2])


def test_short_names_stand_abreast_and_long_ones_under_each_other():
    short = an_organ(great=["Oboe 8"], pedal=["Bourdon 16"])
    long = an_organ(great=["Oboe " + "basse " * 6 + "8"], pedal=["Bourdon 16"])

    def lefts(organ):
        (page,) = pages_of(a_sheet(organ.control_ids(), organ=organ))
        return {text.x for text in texts(page) if text.text in ("Great", "Pedal")}

    assert len(lefts(short)) == 2
    assert len(lefts(long)) == 1


def test_the_second_line_of_a_name_stands_in():
    organ = an_organ(great=["Double Open Diapason " * 2 + "16"])
    (page,) = pages_of(a_sheet(organ.control_ids(), organ=organ), paper="a6")

    first, second = [text.x for text in texts(page) if "Diapason" in text.text]
    assert second > first


@EVERY_PAPER
def test_a_title_as_long_as_can_be_stored_leaves_room_and_is_whole(paper):
    title = LOREM.strip()[:200]
    item = an_item(label=title[:120], piece=Piece(title, composer=title), player=title, note=title)
    sheet = a_sheet(FULL_GREAT, item=item, cue=title)
    pages = lay_out((sheet,), paper, load_fonts())

    assert all(outside(page, paper.margin) == [] for page in pages)
    assert title in said(pages[0])


NAMES = st.text("abcdefghij éß♭", min_size=1, max_size=40)
FIGURES = st.sampled_from(["16", "8", "2 2/3", "10 2/3", "15.19.22"])


@st.composite
def registrations(draw):
    count, cut = draw(st.integers(1, 80)), draw(st.integers(0, 80))
    some, figures = (
        draw(st.lists(NAMES, min_size=1, max_size=9)),
        draw(st.lists(FIGURES, min_size=1)),
    )
    pairs = islice(zip(cycle(some), cycle(figures), strict=False), count)
    stops = [f"{place}x{name} {figure}" for place, (name, figure) in enumerate(pairs)]
    organ = an_organ(great=stops[:cut], pedal=stops[cut:])
    ids, chance = sorted(organ.control_ids()), Random(draw(st.integers(0, 999)))
    changes = [
        chance.sample(ids, chance.randint(0, count)) for _ in range(draw(st.integers(1, 20)))
    ]
    return a_registration(*changes, organ=organ, right="great", feet="pedal")


def counted(ids: Iterable[str]) -> Counter[str]:
    """Count stops by the number that their names begin with."""
    return Counter(re.search(r"/(\d+x)", one)[1] for one in ids)


@settings(max_examples=10, deadline=None)
@given(registrations(), st.sampled_from(sorted(PAPERS)))
def test_any_registration_is_legible_and_within_the_page(registration, paper):
    pages = pages_of(*service_sheets(a_service(an_item()), {1: registration}), paper=paper)

    assert all(outside(page, PAPERS[paper].margin) == [] for page in pages)
    assert all(overlapping(page) == [] for page in pages)
    assert {text.size for page in pages for text in texts(page) if text.size < TEXT} == {FOOT}


@settings(max_examples=10, deadline=None)
@given(registrations(), st.sampled_from(sorted(PAPERS)))
def test_each_change_has_each_drawn_stop_once_and_once_more_if_it_moves(registration, paper):
    card = service_sheets(a_service(an_item()), {1: registration})[1]
    drawn = [change.combination.drawn for change in registration.changes]
    moves = [before ^ after for before, after in pairwise(drawn)]

    names = [text.text for page in pages_of(card, paper=paper) for text in texts(page)]
    found = Counter(match[0] for match in map(re.compile(r"\d+x").match, names) if match)
    assert found == counted(chain(*drawn, *moves))
