from datetime import date

import pytest
import time_machine

from registrations.actions import save_registration
from tests.factories import ItemFactory, ServiceFactory, a_change


@pytest.fixture
def item(db):
    return ItemFactory(piece__title="O God, our help in ages past")


@time_machine.travel(date(2026, 11, 25))
def test_the_week_opens_on_today(organist_client, item):
    answer = organist_client.get("/week/", follow=True)

    assert answer.request["PATH_INFO"] == "/week/2026-11-25/"
    assert "O God, our help in ages past" in answer.content.decode()


def test_findings_are_counted_beside_each_item(organist_client, item):
    save_registration(item, (a_change("great/twelfth-2-2-3"), a_change("swell-to-great")))

    page = organist_client.get("/week/2026-11-29/").content.decode()

    assert "2 changes" in page
    assert "fault" in page
    assert "warning" in page


def test_an_item_without_a_registration_says_so(organist_client, item):
    assert "No registration yet" in organist_client.get("/week/2026-11-29/").content.decode()


def test_an_empty_week_says_what_to_do(director_client):
    page = director_client.get("/week/2027-01-06/").content.decode()

    assert "No service is planned in this week" in page
    assert "/services/new/?day=2027-01-04" in page


def test_a_day_that_no_calendar_has_is_no_page(organist_client):
    assert organist_client.get("/week/2026-02-31/").status_code == 404


@pytest.mark.parametrize("more", [0, 12])
def test_the_week_asks_the_database_as_often_for_many_services_as_for_few(
    organist_client, item, django_assert_num_queries, more
):
    save_registration(item, (a_change("great/principal-4"),))
    for _ in range(more):
        extra = ItemFactory(service=ServiceFactory(), instrument=item.instrument)
        save_registration(extra, (a_change("great/principal-4"),) * 3)

    with django_assert_num_queries(19):
        organist_client.get("/week/2026-11-29/")


def test_the_rules_page_explains_every_rule(organist_client):
    from registrations.checks import RULES
    from registrations.checks.sequence import SEQUENCE_RULES

    page = organist_client.get("/rules/").content.decode()

    assert page.count("<article") == len(RULES) + len(SEQUENCE_RULES)
    assert all(f'id="{rule.NAME}"' in page for rule in (*RULES, *SEQUENCE_RULES))
