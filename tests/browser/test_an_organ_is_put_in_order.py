"""Parts of an organ are put in order with the mouse, the keyboard, and without scripts."""

import pytest
from playwright.sync_api import expect

from instruments.actions.parts import set_places
from instruments.consoles import Panel, Place
from instruments.queries import load_organ
from tests.browser.screens import on_every_screen, with_and_without_javascript
from tests.factories import InstrumentFactory


@pytest.fixture
def row(db):
    return InstrumentFactory()


def great(row) -> list[str]:
    return [stop.name for stop in load_organ(row.pk).division("great").stops]


def drag(page, item, below):
    """Pull an item by its grip to the lower half of another, at the pace of a hand."""
    page.wait_for_load_state("networkidle")
    grip, goal = item.locator(".grip").bounding_box(), below.bounding_box()
    x, y = grip["x"] + grip["width"] / 2, grip["y"] + grip["height"] / 2
    way = goal["y"] + goal["height"] * 0.8 - y
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(1, 16):
        page.mouse.move(x, y + way * step / 15)
        page.wait_for_timeout(40)
    page.wait_for_timeout(150)
    page.mouse.move(x, y + way + 2)
    page.mouse.up()


@on_every_screen
def test_a_stop_is_dragged_down_its_division(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    items = page.locator(f"#stops-of-{row.divisions.get(slug='great').pk} > li")
    items.first.scroll_into_view_if_needed()
    for _ in range(3):  # A busy machine may drop it a row short; a person pulls again.
        if "Open Diapason" not in items.nth(2).inner_text():
            drag(page, items.filter(has_text="Open Diapason").first, items.nth(2))
            page.wait_for_timeout(900)

    expect(items.nth(2)).to_contain_text("Open Diapason")
    assert great(row)[:3] == ["Principal", "Twelfth", "Open Diapason"]


def test_a_list_that_was_dragged_can_be_dragged_again(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    items = page.locator("#keyboards > li")
    for _ in range(2):
        with page.expect_response(f"**/organs/{row.pk}/parts/"):
            drag(page, items.nth(0), items.nth(2))
        expect(page.locator("#keyboards.sortable")).to_be_visible()

    assert load_organ(row.pk).console.keyboards == ("pedal", "great", "swell")


def test_a_list_that_changed_meanwhile_says_so(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    row.couplers.first().delete()
    items = page.locator("#couplers > li")
    items.first.scroll_into_view_if_needed()
    drag(page, items.nth(0), items.nth(1))

    expect(page.get_by_text("The list has changed meanwhile")).to_be_visible()
    expect(items).to_have_count(3)


@with_and_without_javascript
def test_a_stop_is_moved_from_the_keyboard(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    page.get_by_role("button", name="Down: Principal 4").focus()
    page.keyboard.press("Enter")

    moved = page.locator(f"#stops-of-{row.divisions.get(slug='great').pk} > li").nth(2)
    expect(moved).to_contain_text("Principal")
    assert great(row)[:3] == ["Open Diapason", "Twelfth", "Principal"]


def test_the_button_that_moved_a_stop_keeps_the_focus(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    button = page.get_by_role("button", name="Down: Principal 4")
    button.focus()
    with page.expect_response(f"**/organs/{row.pk}/parts/"):
        page.keyboard.press("Enter")

    expect(button).to_be_focused()


@with_and_without_javascript
def test_the_order_of_the_keyboards_is_said_with_one_button(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/parts/")
    page.get_by_role("button", name="They lie as listed here").click()

    expect(page.get_by_text("Nobody has said yet")).to_have_count(0)
    assert load_organ(row.pk).console.keyboards == ("great", "swell", "pedal")


@with_and_without_javascript
def test_controls_are_placed_and_shown_as_a_map(page, sign_in, director_client, row):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/jamb/")
    page.get_by_label("Panel: Trumpet 8′ (Great)").select_option("right")
    page.get_by_label("Column: Trumpet 8′ (Great)").fill("1")
    page.get_by_role("button", name="Save the places").click()
    expect(page.get_by_text("Give the panel, the column and the row")).to_be_visible()

    page.get_by_label("Row: Trumpet 8′ (Great)").fill("2")
    page.get_by_role("button", name="Save the places").click()
    expect(page.locator(".panel.right .knob")).to_contain_text("Trumpet")


def carry(page, knob, cell):
    """Pull a control of the map into another place."""
    page.wait_for_load_state("networkidle")
    start, goal = knob.bounding_box(), cell.bounding_box()
    page.mouse.move(start["x"] + 20, start["y"] + 20)
    page.mouse.down()
    page.mouse.move(start["x"] + 30, start["y"] + 30, steps=3)
    page.mouse.move(goal["x"] + 20, goal["y"] + 20, steps=15)
    page.wait_for_timeout(100)
    page.mouse.up()


def spots(row) -> dict[str, tuple]:
    places = load_organ(row.pk).console.places
    return {one.control: (one.panel, one.column, one.row) for one in places}


@on_every_screen
def test_a_control_is_dragged_to_a_free_place(page, sign_in, director_client, row):
    set_places(row, [Place("great/trumpet-8", Panel.RIGHT, 1, 1)])
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/jamb/")
    with page.expect_response(lambda answer: answer.request.method == "POST"):
        carry(page, page.locator(".panel.right .knob"), page.locator(".panel.left td"))

    expect(page.locator(".panel.left .knob")).to_contain_text("Trumpet")
    expect(page.get_by_text("Saved: where the controls stand.")).to_be_visible()
    assert spots(row) == {"great/trumpet-8": ("left", 1, 1)}


def test_a_control_dragged_onto_another_changes_places_with_it(page, sign_in, director_client, row):
    trumpet = Place("great/trumpet-8", Panel.RIGHT, 1, 1)
    set_places(row, [trumpet, Place("swell/oboe-8", Panel.LEFT, 1, 1)])
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/jamb/")
    with page.expect_response(lambda answer: answer.request.method == "POST"):
        carry(page, page.locator(".panel.right .knob"), page.locator(".panel.left .knob"))

    expect(page.locator(".panel.left .knob")).to_contain_text("Trumpet")
    expect(page.locator(".panel.right .knob")).to_contain_text("Oboe")
    assert spots(row)["swell/oboe-8"] == ("right", 1, 1)


@with_and_without_javascript
def test_a_stop_of_the_house_is_found(page, sign_in, organist_client, row, javascript):
    sign_in(organist_client)
    page.goto("/organs/stops/")
    page.get_by_label("Length").fill("2 2/3")
    if not javascript:
        page.get_by_role("button", name="Find").click()

    expect(page.get_by_text("2 stops, alone or in a mixture, of 2⅔′")).to_be_visible()


def test_an_organ_file_goes_out_and_comes_in_again(page, sign_in, director_client, row, tmp_path):
    sign_in(director_client)
    page.goto(f"/organs/{row.pk}/")
    with page.expect_download() as download:
        page.get_by_role("link", name="Organ file").click()
    download.value.save_as(tmp_path / "organ.json")
    page.goto("/organs/new/file/")
    page.get_by_label("Organ file").set_input_files(tmp_path / "organ.json")
    page.get_by_role("button", name="Save").click()

    expect(page.get_by_text("is saved, as its file has it")).to_be_visible()
