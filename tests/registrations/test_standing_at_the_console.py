import pytest

from registrations.actions import save_registration
from tests.factories import ItemFactory, ServiceFactory, a_change


@pytest.fixture
def service(db):
    service = ServiceFactory()
    hymn = ItemFactory(service=service, piece__title="A hymn", piece__key="Eb major")
    changes = (
        a_change("great/open-diapason-8", cue="Verse 1"),
        a_change("great/open-diapason-8", "great/trumpet-8", cue="Verse 2"),
    )
    save_registration(hymn, changes)
    ItemFactory(service=service, piece__title="A voluntary", instrument=hymn.instrument)
    return service


def test_a_service_is_stepped_through_change_by_change(organist_client, service):
    first = organist_client.get(f"/services/{service.pk}/console/1/").content.decode()

    assert "Verse 1" in first
    assert "E♭ major" in first
    assert f'href="/services/{service.pk}/console/2/"' in first
    assert 'id="step-back"' not in first


def test_the_second_change_says_what_to_add(organist_client, service):
    second = organist_client.get(f"/services/{service.pk}/console/2/").content.decode()

    assert "<b>+</b> Trumpet 8′" in second
    assert "On to A voluntary" in second


def test_an_item_without_a_registration_is_a_step_of_its_own(organist_client, service):
    last = organist_client.get(f"/services/{service.pk}/console/3/").content.decode()

    assert "No registration is written" in last
    assert "End of the service" in last


def test_beyond_the_end_there_is_nothing(organist_client, service):
    assert organist_client.get(f"/services/{service.pk}/console/4/").status_code == 404


def test_nothing_on_the_console_page_can_be_changed(director_client, service):
    page = director_client.get(f"/services/{service.pk}/console/1/").content.decode()

    main = page.split("<main")[1].split("</main>")[0]
    assert "<form" not in main
    assert "<button" not in main


def test_a_service_with_an_empty_order_says_so(organist_client, db):
    page = organist_client.get(f"/services/{ServiceFactory().pk}/console/1/").content.decode()

    assert "Nothing is in the order" in page
