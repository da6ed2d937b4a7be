import io
from dataclasses import replace
from datetime import date

import pypdf

from registrations.cards.deck import item_pdf, services_pdf
from registrations.cards.papers import DEFAULT_PAPER, PAPERS
from services.order import Piece
from tests.registrations.sheets import a_registration, a_service, an_item, words_of

HYMN, VOLUNTARY = an_item(1), an_item(2, piece=Piece("Trumpet Voluntary"))
ADVENT = a_service(HYMN, VOLUNTARY)
REGISTRATIONS = {1: a_registration(("great/principal-4",))}


def read(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def test_the_same_services_give_the_same_bytes():
    decks = {services_pdf((ADVENT,), REGISTRATIONS, DEFAULT_PAPER) for _ in range(2)}

    assert len(decks) == 1


def test_two_services_go_to_the_printer_together():
    second = replace(ADVENT, id=2, title="Second Sunday", day=date(2026, 12, 6))

    deck = read(services_pdf((ADVENT, second), REGISTRATIONS, DEFAULT_PAPER))

    assert deck.metadata.title.count("Sunday 29 November") == 1
    assert deck.metadata.title.partition("; ")[2].startswith("Second Sunday, ")
    assert "Second Sunday" in words_of(deck)


def test_the_card_of_one_item_leaves_the_others_out():
    card = read(item_pdf(ADVENT, HYMN, REGISTRATIONS[1], PAPERS["a4"]))

    assert "Principal" in words_of(card)
    assert "Trumpet Voluntary" not in words_of(card)
    assert card.metadata.title.startswith("Love divine, all loves excelling, ")


def test_an_item_without_a_registration_has_a_card_too():
    card = read(item_pdf(ADVENT, VOLUNTARY, None, PAPERS["a6"]))

    assert "Trumpet Voluntary" in words_of(card)
