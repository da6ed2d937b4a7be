"""Deck: all the sheets that go to the printer together."""

from collections.abc import Mapping

from instruments.organ import Organ
from registrations.cards.content import item_sheet, service_sheets
from registrations.cards.draw import draw_pdf
from registrations.cards.papers import Paper
from registrations.cards.stopguide import guide_sheets
from registrations.cards.words import day_words
from registrations.registration import Registration
from services.order import Item, Service


def services_pdf(
    services: tuple[Service, ...], registrations: Mapping[int, Registration], paper: Paper
) -> bytes:
    """Give the order and the cards of each service as one PDF; registrations are by item id."""
    sheets = tuple(
        sheet for service in services for sheet in service_sheets(service, registrations)
    )
    title = "; ".join(f"{one.title}, {day_words(one.day, one.starts)}" for one in services)
    return draw_pdf(sheets, paper, title=title)


def item_pdf(
    service: Service, item: Item, registration: Registration | None, paper: Paper
) -> bytes:
    """Give the card of one item as a PDF."""
    sheet = item_sheet(service, item, registration)
    return draw_pdf((sheet,), paper, title=f"{sheet.title}, {sheet.day}")


def guide_pdf(organ: Organ, paper: Paper) -> bytes:
    """Give the stop guide of an organ as a PDF, a bookmark for each division."""
    title = f"Stop guide, {organ.name}"
    return draw_pdf(guide_sheets(organ), paper, title=title, subject="Stop guide")
