"""From a pasted stop list to a card, as a director would, with scripts and without."""

import re

import pytest
from playwright.sync_api import expect
from pypdf import PdfReader

from registrations.actions import save_registration
from tests.browser.screens import on_every_screen, with_and_without_javascript
from tests.factories import InstrumentFactory, ItemFactory, PieceFactory, a_change

LIST = """Hollowby parish church

GREAT
Open Diapason 8
Principal 4
Twelfth 2 2/3
Fifteenth 2

SWELL
Stopped Diapason 8
Oboe 8

PEDAL
Bourdon 16

Swell to Great
Great to Pedal
"""


@pytest.fixture
def registered(db):
    item = ItemFactory(piece__title="O God, our help in ages past")
    changes = (
        a_change("great/open-diapason-8", cue="Verse 1"),
        a_change("great/open-diapason-8", "great/principal-4", cue="Verse 2"),
    )
    return save_registration(item, changes)


@on_every_screen
@with_and_without_javascript
def test_a_pasted_list_becomes_an_organ(page, sign_in, director_client, javascript):
    sign_in(director_client)
    page.goto("/organs/new/")
    page.get_by_label("Stop list").fill(LIST)
    if not javascript:
        page.get_by_role("button", name="Show what is understood").click()

    expect(page.get_by_text("7 stops understood")).to_be_visible()
    page.get_by_role("button", name="Save this organ").click()
    expect(page.get_by_role("heading", name="Hollowby parish church")).to_be_visible()
    expect(page.get_by_text("an octave and a fifth higher")).to_be_visible()


@on_every_screen
@with_and_without_javascript
def test_a_service_is_planned_and_registered(page, sign_in, director_client):
    InstrumentFactory()
    PieceFactory(title="Abide with me")
    sign_in(director_client)
    page.goto("/services/new/")
    page.get_by_label("Date").fill("2026-12-06")
    page.get_by_label("Title").fill("Evensong")
    page.get_by_role("button", name="Save").click()
    page.get_by_role("link", name="Add an item").click()
    page.get_by_label("Piece").select_option(index=1)
    page.get_by_label("Organ").select_option(index=1)
    page.get_by_role("button", name="Save").click()
    page.get_by_role("link", name="Registration of Abide with me").click()
    page.get_by_role("button", name="Write a registration").click()

    twelfth = page.locator("[value='great/twelfth-2-2-3'][aria-pressed]")
    twelfth.click()
    expect(twelfth).to_have_attribute("aria-pressed", "true")
    expect(page.get_by_role("link", name="mutation-alone")).to_be_visible()


@on_every_screen
@with_and_without_javascript
def test_a_remedy_clears_its_finding(page, sign_in, director_client, registered):
    sign_in(director_client)
    page.goto(registered.changes.first().get_absolute_url())
    page.get_by_role("button", name="Twelfth").click()
    expect(page.get_by_role("link", name="gap-below-mutation")).to_be_visible()

    page.get_by_role("button", name="Draw Principal").click()
    expect(page.get_by_role("link", name="gap-below-mutation")).to_have_count(0)
    drawn = page.get_by_role("button", name=re.compile("Principal.*drawn"))
    expect(drawn).to_have_attribute("aria-pressed", "true")


def test_a_tap_keeps_the_place_on_the_page(page, sign_in, director_client, registered):
    sign_in(director_client)
    page.goto(registered.changes.first().get_absolute_url())
    bourdon = page.get_by_role("button", name="16′ Bourdon")
    bourdon.scroll_into_view_if_needed()
    before = bourdon.bounding_box()["y"]
    bourdon.click()

    expect(bourdon).to_have_attribute("aria-pressed", "true")
    expect(bourdon).to_be_focused()
    assert abs(bourdon.bounding_box()["y"] - before) < 60


def test_the_hands_are_saved_as_they_are_chosen(page, sign_in, director_client, registered):
    sign_in(director_client)
    page.goto(registered.changes.first().get_absolute_url())
    page.get_by_label("Right hand plays").select_option("swell")

    expect(page.get_by_role("link", name="silent-keyboard")).to_be_visible()
    assert registered.changes.first().right == "swell"


@on_every_screen
@with_and_without_javascript
def test_the_console_page_steps_by_tap(page, sign_in, organist_client, registered):
    sign_in(organist_client)
    page.goto(f"/services/{registered.item.service_id}/console/1/")
    page.get_by_role("link", name="Next: Verse 2").click()

    expect(page.get_by_role("heading", name="Verse 2")).to_be_visible()
    expect(page.get_by_text("Principal 4′")).to_be_visible()


def test_the_console_page_steps_by_the_keys_of_a_pedal(page, sign_in, organist_client, registered):
    sign_in(organist_client)
    page.goto(f"/services/{registered.item.service_id}/console/1/")
    page.keyboard.press("PageDown")
    expect(page.get_by_role("heading", name="Verse 2")).to_be_visible()
    page.wait_for_timeout(300)

    page.keyboard.press("PageUp")
    expect(page.get_by_role("heading", name="Verse 1")).to_be_visible()


@pytest.mark.parametrize("screen", [{"width": 820, "height": 1180}, {"width": 1180, "height": 820}])
def test_the_console_page_needs_no_scrolling(page, sign_in, organist_client, registered, screen):
    sign_in(organist_client)
    page.goto(f"/services/{registered.item.service_id}/console/2/")

    tall = page.evaluate("() => document.documentElement.scrollHeight")
    assert tall <= screen["height"]


def test_a_volunteer_opens_a_card(page, sign_in, printer_client, registered, tmp_path):
    sign_in(printer_client)
    page.goto("/print/")
    response = page.request.get(f"/services/{registered.item.service_id}/cards.pdf?paper=a4")
    (tmp_path / "cards.pdf").write_bytes(response.body())

    text = "".join(one.extract_text() for one in PdfReader(tmp_path / "cards.pdf").pages)
    assert "Open Diapason" in text
    assert "Principal" in text
