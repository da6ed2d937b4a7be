"""Every page, on every screen, in light and dark: nothing for axe to find, nothing too wide."""

import pytest
from axe_playwright_python.sync_playwright import Axe

from instruments.actions.parts import set_places
from instruments.jamb import usual_places
from instruments.queries import load_organ
from registrations.actions import save_registration
from tests.browser.screens import on_every_screen
from tests.factories import ItemFactory, a_change

PAGES = [
    "/week/2026-11-29/",
    "/services/{service}/",
    "/services/new/",
    "/services/{service}/items/new/",
    "/services/{service}/console/1/",
    "/pieces/",
    "/pieces/new/",
    "/organs/",
    "/organs/new/",
    "/organs/{organ}/",
    "/organs/{organ}/parts/",
    "/organs/{organ}/facts/",
    "/organs/{organ}/jamb/",
    "/organs/{organ}/leaving/",
    "/organs/{organ}/keyboards/new/",
    "/organs/{organ}/divisions/new/",
    "/organs/{organ}/couplers/new/",
    "/organs/{organ}/console/facts/",
    "/organs/{organ}/pistons/new/",
    "/organs/new/file/",
    "/organs/stops/",
    "/stops/{stop}/facts/",
    "/parts/stops/{stop}/leaving/",
    "/organs/{organ}/guide/",
    "/organs/{organ}/guide/great/twelfth-2-2-3/",
    "/organs/{organ}/guide/great/mixture-19-22-26/",
    "/changes/{change}/",
    "/changes/{change}/?draw=great/principal-4",
    "/changes/{change}/sounding/",
    "/print/",
    "/rules/",
    "/people/",
    "/password/",
]


@pytest.fixture
def numbers(db):
    item = ItemFactory()
    set_places(item.instrument, usual_places(load_organ(item.instrument_id)))
    registration = save_registration(item, (a_change("great/twelfth-2-2-3", "swell-to-great"),))
    return {
        "service": item.service_id,
        "organ": item.instrument_id,
        "stop": item.instrument.stops.get(slug="great/twelfth-2-2-3").pk,
        "change": registration.changes.first().pk,
    }


@on_every_screen
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_on_any_page(page, sign_in, director_client, numbers, scheme):
    sign_in(director_client)
    page.emulate_media(color_scheme=scheme)
    found = {}
    for address in PAGES:
        page.goto(address.format(**numbers))
        faults = Axe().run(page).response["violations"]
        if faults:
            found[address] = [(one["id"], one["nodes"][0]["html"][:120]) for one in faults]

    assert found == {}


@pytest.mark.parametrize("width", [320, 820, 1440])
def test_no_page_is_wider_than_its_screen(page, sign_in, director_client, numbers, width):
    sign_in(director_client)
    page.set_viewport_size({"width": width, "height": 900})
    wide = {}
    for address in PAGES:
        page.goto(address.format(**numbers))
        needed = page.evaluate("() => document.documentElement.scrollWidth")
        if needed > width:
            wide[address] = needed

    assert wide == {}


def test_a_stop_is_drawn_from_the_keyboard(page, sign_in, director_client, numbers):
    sign_in(director_client)
    page.goto(f"/changes/{numbers['change']}/")
    page.locator("#control-great\\/principal-4").focus()
    page.keyboard.press("Enter")

    pressed = page.locator("#control-great\\/principal-4[aria-pressed=true]")
    pressed.wait_for()
    assert pressed.count() == 1
