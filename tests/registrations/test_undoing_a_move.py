import pytest

from registrations.actions import save_registration
from registrations.models import Change
from tests.factories import ItemFactory, a_change

DIAPASON, TWELFTH = "great/open-diapason-8", "great/twelfth-2-2-3"


@pytest.fixture
def change(db) -> Change:
    return save_registration(ItemFactory(), (a_change(DIAPASON, TWELFTH),)).changes.first()


def drawn(change: Change) -> set[str]:
    return set(change.drawn.values_list("control", flat=True))


def move(client, change, action, **given):
    return client.post(f"/changes/{change.pk}/{action}/", given, follow=True)


def undo(client, change, answer):
    """Press the button as the page offers it."""
    back = answer.context["undo"]
    given = {"draw": sorted(back.draw), "put_in": sorted(back.put_in), "undo": "yes"}
    return client.post(f"/changes/{change.pk}/remedy/", given, follow=True)


def test_nothing_is_to_be_undone_before_the_first_move(director_client, change):
    answer = director_client.get(f"/changes/{change.pk}/")

    assert answer.context["undo"] is None
    assert 'id="undo"' not in answer.content.decode()


@pytest.mark.parametrize("control", [TWELFTH, "great/principal-4", "great-to-pedal"])
def test_a_tap_is_undone(director_client, change, control):
    before = drawn(change)
    answer = move(director_client, change, "draw", control=control)
    assert drawn(change) != before
    undo(director_client, change, answer)

    assert drawn(change) == before


def test_a_remedy_is_undone(director_client, change):
    answer = move(director_client, change, "remedy", draw="great/principal-4", put_in=TWELFTH)
    assert drawn(change) == {DIAPASON, "great/principal-4"}
    undo(director_client, change, answer)

    assert drawn(change) == {DIAPASON, TWELFTH}


def test_only_what_was_moved_is_undone(director_client, change):
    answer = move(director_client, change, "remedy", draw=[DIAPASON, "great/principal-4"])
    undo(director_client, change, answer)

    assert drawn(change) == {DIAPASON, TWELFTH}


def test_after_an_undo_there_is_nothing_to_undo(director_client, change):
    answer = move(director_client, change, "draw", control=TWELFTH)

    assert undo(director_client, change, answer).context["undo"] is None


def test_a_move_that_moves_nothing_is_not_to_be_undone(director_client, change):
    assert move(director_client, change, "remedy", draw=DIAPASON).context["undo"] is None


def test_no_undo_is_offered_once_somebody_has_moved_the_same(director_client, change):
    answer = move(director_client, change, "draw", control=TWELFTH)
    address = answer.request["PATH_INFO"] + "?" + answer.request["QUERY_STRING"]
    move(director_client, change, "draw", control=TWELFTH)

    assert director_client.get(address).context["undo"] is None


def test_a_stop_that_left_the_organ_cannot_be_drawn_again(director_client, change):
    change.registration.instrument.stops.filter(slug=TWELFTH).delete()
    answer = move(director_client, change, "draw", control=TWELFTH)

    assert drawn(change) == {DIAPASON}
    assert answer.context["undo"] is None


def test_the_button_says_what_it_does(director_client, change):
    page = move(director_client, change, "draw", control=TWELFTH).content.decode()

    assert "<b>Undo</b> <span>+ Draw Twelfth 2⅔′ (Great) </span>" in page
