"""A director accepts a finding, undoes a move and listens, with scripts and without."""

import re

import pytest
from playwright.sync_api import expect

from registrations.actions import save_registration
from tests.browser.screens import on_every_screen, with_and_without_javascript
from tests.factories import ItemFactory, a_change

DIAPASON, TWELFTH = "great/open-diapason-8", "great/twelfth-2-2-3"
#: Keeps every AudioContext that the page opens.
LISTENING = """
    window.opened = [];
    const Real = window.AudioContext;
    window.AudioContext = class extends Real { constructor() { super(); opened.push(this); } };
"""


@pytest.fixture
def change(db):
    return save_registration(ItemFactory(), (a_change(DIAPASON, TWELFTH),)).changes.first()


@pytest.fixture
def editor(page, sign_in, director_client, change):
    sign_in(director_client)
    page.add_init_script(LISTENING)
    page.goto(change.get_absolute_url())
    return page


def pressed(page, name):
    return page.get_by_role("button", name=re.compile(f"{name}.*drawn"))


@on_every_screen
@with_and_without_javascript
def test_a_finding_is_accepted_and_taken_back(editor):
    editor.get_by_text("It is meant", exact=True).click()
    editor.get_by_label("Why it is meant").fill("A solo colour")
    editor.get_by_role("button", name="Accept it").click()

    expect(editor.get_by_text("Accepted: A solo colour, Dora Vance")).to_be_visible()
    expect(editor.get_by_role("heading", name="Nothing else to say against it")).to_be_visible()
    editor.get_by_role("button", name="Take it back").click()
    expect(editor.get_by_role("heading", name="1 finding")).to_be_visible()


@with_and_without_javascript
def test_an_acceptance_without_a_reason_is_asked_again(editor):
    editor.get_by_text("It is meant", exact=True).click()
    editor.get_by_role("button", name="Accept it").click()

    expect(editor.get_by_text("Write why it is meant")).to_be_visible()


@on_every_screen
@with_and_without_javascript
def test_a_tap_and_a_remedy_are_undone(editor):
    editor.get_by_role("button", name="Draw Principal").click()
    expect(pressed(editor, "Principal")).to_be_visible()
    editor.get_by_role("button", name="Undo").click()
    expect(pressed(editor, "Principal")).to_have_count(0)

    expect(editor.get_by_role("button", name="Undo")).to_have_count(0)
    pressed(editor, "Twelfth").click()
    editor.get_by_role("button", name="Undo + Draw Twelfth").click()
    expect(pressed(editor, "Twelfth")).to_be_visible()


@with_and_without_javascript
def test_the_undo_outlasts_a_reload(editor):
    pressed(editor, "Twelfth").click()
    undo = editor.get_by_role("button", name="Undo")
    expect(undo).to_be_visible()
    editor.reload()

    expect(undo).to_be_visible()


def test_the_open_fold_follows_every_tap(editor):
    editor.get_by_text("What sounds:").click()
    missing = editor.get_by_role("cell", name="missing")
    expect(missing).to_be_visible()
    editor.get_by_role("button", name="4′ Principal").click()

    expect(missing).to_have_count(0)
    expect(editor.get_by_role("cell", name="Principal 4′")).to_be_visible()


def test_a_closed_fold_asks_for_nothing(editor):
    asked = []
    editor.on("request", lambda request: asked.append(request.url))
    editor.get_by_role("button", name="4′ Principal").click()
    expect(pressed(editor, "Principal")).to_be_visible()

    assert [url for url in asked if "sounding" in url] == []


@on_every_screen
def test_a_chord_is_heard_and_stopped(editor):
    editor.get_by_text("What sounds:").click()
    link = editor.get_by_role("link", name="c1, e1, g1 and c2 on the Great")
    with editor.expect_response(re.compile("partials.json")) as answer:
        link.click()

    assert answer.value.json()["partials"]
    expect(editor.get_by_role("status")).to_have_text("c1, e1, g1 and c2 on the Great")
    assert editor.evaluate("opened.map((one) => one.state)") == ["running"]
    link.click()
    expect(editor.get_by_role("status")).to_have_text("")


def test_it_starts_soft(editor):
    editor.get_by_text("What sounds:").click()

    expect(editor.get_by_label("How loud")).to_have_value("50")


@pytest.mark.parametrize("javascript", [False])
def test_without_scripts_a_sound_file_is_offered(editor):
    editor.get_by_text("What sounds:").click()
    editor.get_by_role("link", name="Show what sounds").click()
    address = editor.get_by_role("link", name="c1 on the Great").get_attribute("href")

    expect(editor.get_by_label("How loud")).to_be_hidden()
    assert editor.request.get(address).body()[:4] == b"RIFF"
