"""Plain functions that make services and sheets for the tests of cards, and read PDFs back."""

import io
from datetime import date, time

import pypdf

from registrations.cards.content import Sheet, item_sheet
from registrations.cards.draw import draw_pdf
from registrations.cards.papers import PAPERS
from registrations.registration import Change, Registration
from services.order import Item, Piece, PieceKind, Service
from tests.builders import a_combination, an_organ

#: A piece with all that a heading can carry.
HYMN = Piece(
    "Love divine, all loves excelling",
    PieceKind.HYMN,
    "John Stainer",
    "Love Divine",
    "8.7.8.7",
    "Ab",
    4,
)


def an_item(number: int = 1, **given) -> Item:
    values = {"id": number, "label": "Offertory hymn", "piece": HYMN, "player": "Ida Marsh"}
    return Item(**{**values, **given})


def a_service(*items: Item, **given) -> Service:
    values = {
        "id": 1,
        "day": date(2026, 11, 29),
        "starts": time(9, 5),
        "title": "Advent Sunday",
        "church": "St Osyth",
        "items": items,
    }
    return Service(**{**values, **given})


def a_registration(*drawn, organ=None, cue="Verse 1", **given) -> Registration:
    """One change for each tuple of ids: ``a_registration(("great/principal-4",), ())``."""
    changes = (
        Change(f"{cue}{'!' * more}", a_combination(*ids, **given)) for more, ids in enumerate(drawn)
    )
    return Registration(organ or an_organ(), tuple(changes))


def a_sheet(*drawn, item=None, **given) -> Sheet:
    item = item or an_item()
    return item_sheet(a_service(item), item, a_registration(*drawn, **given))


def pdf_of(*sheets: Sheet, paper: str = "a5") -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(draw_pdf(sheets, PAPERS[paper], title="Cards")))


def words_of(reader: pypdf.PdfReader) -> str:
    """Give the text of all pages in the order it is drawn, with single spaces."""
    return " ".join(" ".join(page.extract_text() for page in reader.pages).split())
