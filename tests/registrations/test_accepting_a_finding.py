import pytest
from django.db import IntegrityError, transaction

from registrations.actions import save_registration
from registrations.models import Acceptance, Change
from tests.factories import ItemFactory, a_change

HTMX = {"HX-Request": "true"}
REASON = "The twelfth is a solo colour here"


@pytest.fixture
def change(db) -> Change:
    drawn = a_change("great/open-diapason-8", "great/twelfth-2-2-3")
    return save_registration(ItemFactory(), (drawn,)).changes.first()


def shown(client, change) -> dict:
    return client.get(f"/changes/{change.pk}/").context


def fingerprint(client, change) -> str:
    (one,) = shown(client, change)["findings"]
    return one["fingerprint"]


def accept(client, change, reason=REASON, **more):
    given = {"fingerprint": fingerprint(client, change), "reason": reason}
    return client.post(f"/changes/{change.pk}/accept/", given, **more)


def week(client, change) -> str:
    return client.get(f"/week/{change.registration.item.service.day}/").content.decode()


def test_an_accepted_finding_stays_with_its_reason_and_who_accepted_it(director_client, change):
    answer = accept(director_client, change, follow=True).content.decode()

    assert "warning, accepted" in answer or "advice, accepted" in answer
    assert f"Accepted: {REASON}, Dora Vance" in answer
    assert "Nothing else to say against it" in answer


def test_what_is_accepted_offers_no_remedies(director_client, change):
    answer = accept(director_client, change, follow=True).content.decode()

    assert 'class="remedies"' not in answer


def test_remedies_are_looked_for_only_for_those_who_may_take_them(
    director_client, organist_client, change
):
    (read,), (written,) = (
        shown(client, change)["findings"] for client in (organist_client, director_client)
    )

    assert read["finding"] == written["finding"]
    assert read["remedies"] == ()
    assert written["remedies"]


def test_accepting_gives_htmx_the_part_it_swaps(director_client, change):
    answer = accept(director_client, change, follow=True, headers=HTMX).content.decode()

    assert answer.lstrip().startswith('<div id="editor"')
    assert f"Accepted: {REASON}" in answer


def test_the_week_counts_it_no_more(director_client, change):
    before = week(director_client, change)
    accept(director_client, change)

    assert 'class="level ' in before
    assert 'class="level ' not in week(director_client, change)


def test_it_comes_back_when_the_evidence_changes(director_client, change):
    accept(director_client, change)
    coupler = {"control": "great/open-diapason-8"}
    director_client.post(f"/changes/{change.pk}/draw/", coupler)

    context = shown(director_client, change)
    assert context["accepted"] == []
    assert [one["finding"].rule for one in context["findings"]] == ["mutation-alone"]


def test_it_can_be_taken_back(director_client, change):
    accept(director_client, change)
    (one,) = shown(director_client, change)["accepted"]
    director_client.post(f"/changes/{change.pk}/take-back/", {"fingerprint": one["fingerprint"]})

    assert shown(director_client, change)["accepted"] == []
    assert not Acceptance.objects.exists()


def test_a_second_reason_replaces_the_first(director_client, change):
    given = {"fingerprint": fingerprint(director_client, change)}
    for reason in ("Once", "Better"):
        director_client.post(f"/changes/{change.pk}/accept/", {**given, "reason": reason})

    assert Acceptance.objects.get().reason == "Better"


def test_without_a_reason_it_is_refused_where_it_stands(director_client, change):
    answer = accept(director_client, change, "  ")

    assert answer.status_code == 422
    assert "Write why it is meant" in answer.content.decode()
    assert '<details class="accept" open>' in answer.content.decode()


def test_a_reason_that_is_too_long_is_refused_and_kept(director_client, change):
    answer = accept(director_client, change, "long " * 70)

    assert answer.status_code == 422
    assert "long long" in answer.content.decode()
    assert not Acceptance.objects.exists()


def test_a_finding_that_is_not_made_is_not_accepted(director_client, change):
    given = {"fingerprint": "0" * 32, "reason": REASON}
    answer = director_client.post(f"/changes/{change.pk}/accept/", given, follow=True, headers=HTMX)

    assert "no longer made" in answer.content.decode()
    assert not Acceptance.objects.exists()


def test_an_organist_sees_what_is_accepted_but_accepts_nothing(
    director_client, organist_client, change
):
    given = {"fingerprint": fingerprint(director_client, change), "reason": REASON}
    refused = organist_client.post(f"/changes/{change.pk}/accept/", given)
    accept(director_client, change)
    page = organist_client.get(f"/changes/{change.pk}/").content.decode()

    assert refused.status_code == 403
    assert f"Accepted: {REASON}" in page
    assert "Take it back" not in page


def test_an_administrator_who_is_no_person_accepts_without_a_name(administrator_client, change):
    answer = accept(administrator_client, change, follow=True).content.decode()

    assert f"Accepted: {REASON}</p>" in answer
    assert Acceptance.objects.get().accepted_by is None


def test_a_reason_is_kept_by_the_database_too(change):
    with pytest.raises(IntegrityError), transaction.atomic():
        change.acceptances.create(rule="x", fingerprint="y", reason="")
    change.acceptances.create(rule="x", fingerprint="y", reason="Meant")

    with pytest.raises(IntegrityError), transaction.atomic():
        change.acceptances.create(rule="x", fingerprint="y", reason="Meant again")
    assert str(change.acceptances.get()) == "x: Meant"
