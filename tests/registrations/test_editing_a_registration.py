import re

import pytest

from registrations.actions import save_registration
from registrations.models import Change, Registration
from tests.factories import ItemFactory, a_change

HTMX = {"HX-Request": "true"}


@pytest.fixture
def change(db) -> Change:
    item = ItemFactory()
    changes = (
        a_change("great/open-diapason-8", cue="Verse 1"),
        a_change("great/open-diapason-8", "great/principal-4", cue="Verse 2"),
    )
    return save_registration(item, changes).changes.first()


def drawn(change: Change) -> set[str]:
    return set(change.drawn.values_list("control", flat=True))


def test_the_editor_shows_every_control_with_what_is_drawn(director_client, change):
    page = director_client.get(f"/changes/{change.pk}/").content.decode()

    assert page.count('aria-pressed="true"') == 1
    assert page.count("aria-pressed=") == 15 + 4
    assert "Twelfth" in page
    assert "2⅔′" in page


def test_a_tap_draws_a_stop_and_a_second_tap_puts_it_in(director_client, change):
    director_client.post(f"/changes/{change.pk}/draw/", {"control": "great/twelfth-2-2-3"})

    assert "great/twelfth-2-2-3" in drawn(change)

    director_client.post(f"/changes/{change.pk}/draw/", {"control": "great/twelfth-2-2-3"})

    assert drawn(change) == {"great/open-diapason-8"}


def test_findings_come_back_with_the_tap(director_client, change):
    tap = {"control": "great/twelfth-2-2-3"}
    answer = director_client.post(
        f"/changes/{change.pk}/draw/", tap, headers=HTMX, follow=True
    ).content.decode()

    assert "gap-below-mutation" in answer
    assert answer.lstrip().startswith('<div id="editor"')


def test_a_tap_does_not_wait_for_the_remedies_which_come_behind_it(director_client, change):
    tap = {"control": "great/twelfth-2-2-3"}
    answer = director_client.post(
        f"/changes/{change.pk}/draw/", tap, headers=HTMX, follow=True
    ).content.decode()
    behind = director_client.get(f"/changes/{change.pk}/remedies/", headers=HTMX).content.decode()

    assert 'value="great/principal-4">' not in answer
    assert f'hx-get="/changes/{change.pk}/remedies/' in answer
    assert behind.lstrip().startswith('<section class="findings"')
    assert 'name="draw" value="great/principal-4"' in behind


def test_a_control_that_is_not_on_the_organ_is_not_drawn(director_client, change):
    answer = director_client.post(f"/changes/{change.pk}/draw/", {"control": "x/y"}, follow=True)

    assert drawn(change) == {"great/open-diapason-8"}
    assert "no longer on this organ" in answer.content.decode()


def test_a_remedy_is_taken_with_one_button(director_client, change):
    director_client.post(f"/changes/{change.pk}/draw/", {"control": "great/twelfth-2-2-3"})

    page = director_client.get(f"/changes/{change.pk}/").content.decode()
    assert 'name="draw" value="great/principal-4"' in page
    director_client.post(f"/changes/{change.pk}/remedy/", {"draw": "great/principal-4"})

    assert "great/principal-4" in drawn(change)
    assert (
        "gap-below-mutation" not in director_client.get(f"/changes/{change.pk}/").content.decode()
    )


def test_a_change_shows_what_moves_since_the_one_before(director_client, change):
    second = change.registration.changes.last()

    page = director_client.get(f"/changes/{second.pk}/").content.decode()

    assert "<b>+</b> Principal 4′ (Great)" in page


def test_a_new_change_begins_with_what_was_drawn(director_client, change):
    director_client.post(f"/changes/{change.pk}/add/", {"cue": "Refrain"})

    cues = list(change.registration.changes.values_list("cue", flat=True))
    assert cues == ["Verse 1", "Refrain", "Verse 2"]
    assert drawn(change.registration.changes.get(cue="Refrain")) == drawn(change)


def test_changes_can_be_set_earlier_and_later(director_client, change):
    director_client.post(f"/changes/{change.pk}/move/", {"to": "later"})

    cues = list(change.registration.changes.values_list("cue", flat=True))
    assert cues == ["Verse 2", "Verse 1"]


def test_the_last_change_takes_the_registration_with_it(director_client, change):
    for pk in list(change.registration.changes.values_list("pk", flat=True)):
        director_client.post(f"/changes/{pk}/remove/")

    assert not Registration.objects.exists()


def test_hands_are_set_and_checked(director_client, change):
    hands = {
        "cue": "Verse 1",
        "right": "swell",
        "left": "great",
        "texture": "solo",
        "solo": "right",
    }
    answer = director_client.post(f"/changes/{change.pk}/set/", hands, follow=True)

    assert "silent-keyboard" in answer.content.decode()


def test_a_change_without_a_cue_is_refused_and_keeps_what_was_typed(director_client, change):
    answer = director_client.post(f"/changes/{change.pk}/set/", {"cue": "", "note": "Box shut"})

    assert answer.status_code == 422
    assert "Box shut" in answer.content.decode()


def test_a_stop_that_left_the_organ_is_told_and_can_be_struck_out(director_client, change):
    change.registration.instrument.stops.filter(slug="great/open-diapason-8").delete()

    page = director_client.get(f"/changes/{change.pk}/").content.decode()
    assert page.count("is drawn here but not on this organ") == 1
    assert "Strike out “great/open-diapason-8”" in page
    director_client.post(f"/changes/{change.pk}/draw/", {"control": "great/open-diapason-8"})

    assert drawn(change) == set()


def test_a_change_that_sets_the_same_again_is_told_and_can_be_accepted(director_client, change):
    director_client.post(f"/changes/{change.pk}/add/", {"cue": "Verse 1 again"})
    verse = Change.objects.get(cue="Verse 1 again")
    page = director_client.get(f"/changes/{verse.pk}/").content.decode()
    (print_of,) = re.findall(r'change-does-nothing.*?name="fingerprint" value="(\w+)"', page, re.S)
    accepted = {"fingerprint": print_of, "reason": "As the verse before"}
    director_client.post(f"/changes/{verse.pk}/accept/", accepted)

    assert verse.acceptances.get().rule == "change-does-nothing"


def test_an_item_without_a_registration_offers_to_begin_one(director_client, db):
    item = ItemFactory()
    page = director_client.get(f"/items/{item.pk}/registration/")

    assert "Write a registration" in page.content.decode()
    director_client.post(f"/items/{item.pk}/registration/begin/")
    assert Registration.objects.get().item == item


def test_an_organist_reads_but_draws_nothing(organist_client, change):
    page = organist_client.get(f"/changes/{change.pk}/").content.decode()
    refused = organist_client.post(f"/changes/{change.pk}/draw/", {"control": "great/fifteenth-2"})

    assert page.count("disabled") == 15 + 4
    assert refused.status_code == 403
    assert drawn(change) == {"great/open-diapason-8"}


@pytest.mark.parametrize("changes", [2, 12])
def test_the_editor_asks_the_database_as_often_for_many_changes_as_for_few(
    director_client, django_assert_num_queries, changes
):
    item = ItemFactory()
    registration = save_registration(item, (a_change("great/principal-4"),) * changes)
    pk = registration.changes.first().pk

    with django_assert_num_queries(15):
        director_client.get(f"/changes/{pk}/")
