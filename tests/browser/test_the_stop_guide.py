"""A learner reads the stop guide of an organ."""

from playwright.sync_api import expect

from tests.browser.screens import on_every_screen, with_and_without_javascript
from tests.factories import InstrumentFactory


@on_every_screen
@with_and_without_javascript
def test_a_learner_goes_from_the_organ_to_a_stop_and_on(page, sign_in, organist_client):
    organ = InstrumentFactory()
    sign_in(organist_client)
    page.goto(f"/organs/{organ.pk}/")
    page.get_by_role("link", name="Stop guide").click()
    page.get_by_role("link", name="Twelfth").click()

    expect(page.get_by_text("an octave and a fifth higher.")).to_be_visible()
    expect(page.get_by_role("img")).to_be_visible()
    page.get_by_role("link", name="Next: Fifteenth 2′").click()
    expect(page.get_by_role("heading", name="Fifteenth")).to_be_visible()


def test_a_ladder_stays_inside_its_frame(page, sign_in, organist_client):
    organ = InstrumentFactory()
    sign_in(organist_client)
    page.set_viewport_size({"width": 320, "height": 800})
    page.goto(f"/organs/{organ.pk}/guide/great/mixture-19-22-26/")

    ladder = page.get_by_role("img").bounding_box()
    frame = page.locator("figure").bounding_box()
    assert frame["x"] <= ladder["x"]
    assert ladder["x"] + ladder["width"] <= frame["x"] + frame["width"]
