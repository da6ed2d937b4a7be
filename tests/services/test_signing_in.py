import pytest
from django.test import Client

from services.actions import sign_in_path
from services.models import Person
from tests.factories import PersonFactory


@pytest.fixture
def invited(db) -> Person:
    person = PersonFactory(role="printer")
    person.user.set_unusable_password()
    person.user.save()
    return person


def test_a_sign_in_link_only_asks_until_its_button_is_pressed(client, invited):
    path = sign_in_path(invited.user)

    assert "works once" in client.get(path).content.decode()
    assert "_auth_user_id" not in client.session


def test_a_sign_in_link_works_once(client, invited):
    path = sign_in_path(invited.user)
    client.post(f"{path}in/")

    assert client.session["_auth_user_id"] == str(invited.user.pk)
    assert Client().post(f"{path}in/").status_code == 404


@pytest.mark.parametrize("path", ["/welcome/MQ/abc-def/", "/welcome/!!/x/", "/welcome/OTk/x-y/"])
def test_a_link_that_was_never_made_says_so(client, db, path):
    answer = client.get(path)

    assert answer.status_code == 404
    assert "used up" in answer.content.decode()


def test_a_password_of_ones_own_is_chosen_after_the_link(client, invited):
    client.post(f"{sign_in_path(invited.user)}in/")
    words = "the day thou gavest slow"
    client.post("/password/choose/", {"new_password1": words, "new_password2": words})

    assert Client().login(username=invited.user.username, password=words)


def test_a_short_password_is_refused(client, invited):
    client.force_login(invited.user)

    answer = client.post("/password/choose/", {"new_password1": "amen", "new_password2": "amen"})

    assert answer.status_code == 422


def test_everyone_begins_where_their_work_is(printer_client, organist_client):
    assert printer_client.get("/").url == "/print/"
    assert organist_client.get("/").url == "/week/"


def test_a_director_adds_somebody_and_makes_a_link(director_client):
    director_client.post("/people/add/", {"name": "Ada Fell", "role": "organist"})
    ada = Person.objects.get(name="Ada Fell")

    page = director_client.post(f"/people/{ada.pk}/link/").content.decode()

    assert "http://testserver/welcome/" in page


def test_two_people_of_one_name_sign_in_apart(director_client):
    for _ in range(2):
        director_client.post("/people/add/", {"name": "Ada Fell", "role": "organist"})

    names = set(Person.objects.filter(name="Ada Fell").values_list("user__username", flat=True))
    assert names == {"ada.fell", "ada.fell2"}


def test_who_is_signed_out_is_asked_to_sign_in(client, db):
    answer = client.get("/week/2026-11-29/")

    assert answer.url == "/sign-in/?next=/week/2026-11-29/"


def test_htmx_is_sent_to_sign_in_with_its_whole_window(client, db):
    answer = client.get("/week/2026-11-29/", headers={"HX-Request": "true"})

    assert answer.headers["HX-Redirect"].startswith("/sign-in/")


def test_a_printer_prints_and_nothing_else(printer_client):
    assert printer_client.get("/print/").status_code == 200
    assert printer_client.get("/week/2026-11-29/").status_code == 403
    assert printer_client.get("/organs/").status_code == 403


def test_somebody_without_a_role_is_told_so(stranger_client):
    answer = stranger_client.get("/week/2026-11-29/")

    assert answer.status_code == 403
    assert "Ask the director" in answer.content.decode()


def test_an_administrator_may_do_all(administrator_client):
    assert administrator_client.get("/people/").status_code == 200
    assert administrator_client.get("/admin/").status_code == 200
