from playwright.sync_api import expect

from tests.browser.screens import on_every_screen, with_and_without_javascript


@on_every_screen
@with_and_without_javascript
def test_whoever_is_not_signed_in_is_asked_to(page):
    page.goto("/organs/")

    expect(page.get_by_label("Password")).to_be_visible()
    assert page.viewport_size["width"] in {820, 1440}
