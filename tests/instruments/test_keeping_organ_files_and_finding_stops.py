from dataclasses import replace

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from instruments.models import Instrument
from instruments.organfile import organ_text
from instruments.queries import load_organ
from tests.builders import an_organ
from tests.factories import InstrumentFactory, ItemFactory
from tests.instruments.test_consolefile import CONSOLE


def upload(client, content: bytes, name="organ.json"):
    return client.post("/organs/keep/file/", {"file": SimpleUploadedFile(name, content)})


def found(client, **wanted) -> str:
    return client.get("/organs/stops/", wanted).content.decode()


def test_an_organ_file_becomes_an_organ(director_client):
    organ = replace(an_organ(), console=CONSOLE, notes="Wind 3 inches.")

    upload(director_client, organ_text(organ).encode())

    assert load_organ(Instrument.objects.get().pk) == organ


def test_a_file_that_a_desktop_program_marked_is_read_too(director_client):
    upload(director_client, organ_text(an_organ()).encode("utf-8-sig"))

    assert Instrument.objects.count() == 1


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "JSON"),
        (b"GREAT\nPrincipal 8", "JSON"),
        (b"\xff\xfe\x00", "not text in UTF-8"),
        (organ_text(an_organ()).replace('"C-c4"', '"C-x"').encode(), "“x” is not a key"),
        (b" " * (2 * 1024 * 1024 + 1), "at most 2 MB"),
    ],
)
def test_a_file_that_is_no_organ_is_refused_in_words(director_client, content, sentence):
    answer = upload(director_client, content)

    assert answer.status_code == 422
    assert sentence in answer.content.decode()
    assert not Instrument.objects.exists()


def test_sending_no_file_is_said(director_client):
    assert director_client.post("/organs/keep/file/").status_code == 422
    assert director_client.get("/organs/new/file/").status_code == 200


def test_an_organ_nobody_uses_is_removed_after_a_question(director_client):
    row = InstrumentFactory()
    page = director_client.get(f"/organs/{row.pk}/leaving/").content.decode()
    assert "It goes with its 15 stops" in page

    director_client.post(f"/organs/{row.pk}/remove/")

    assert not Instrument.objects.exists()


def test_an_organ_that_a_service_uses_is_kept_and_says_why(director_client):
    row = ItemFactory().instrument
    ItemFactory(instrument=row)

    page = director_client.post(f"/organs/{row.pk}/remove/", follow=True).content.decode()

    assert "An organ is used by 2 items." in page
    assert load_organ(row.pk) == an_organ()


def test_every_stop_of_the_house_is_shown(organist_client):
    InstrumentFactory()
    InstrumentFactory(organ=an_organ(great=["Quint 2 2/3"]))

    assert "16 stops" in found(organist_client)


def test_all_stops_of_a_length_are_found_in_mixtures_too(organist_client):
    InstrumentFactory()
    InstrumentFactory(organ=an_organ(great=["Mixture 12.15.19", "Principal 8"]))

    page = found(organist_client, length="2 2/3")

    assert "3 stops" in page
    assert all(name in page for name in ("Twelfth", "Nazard", "Mixture"))


@pytest.mark.parametrize(
    ("wanted", "count"),
    [
        ({"name": "flute"}, "2 stops"),
        ({"name": "bass FLUTE"}, "1 stop"),
        ({"family": "string"}, "2 stops"),
        ({"division": "pedal"}, "2 stops"),
        ({"division": "Swell", "length": "8"}, "4 stops"),
        ({"name": "tuba"}, "0 stops"),
    ],
)
def test_stops_are_found_by_what_they_are(organist_client, wanted, count):
    InstrumentFactory()

    assert count in found(organist_client, **wanted)


def test_a_length_that_is_none_is_refused_in_words(organist_client):
    answer = organist_client.get("/organs/stops/", {"length": "long"})

    assert answer.status_code == 422
    assert "“long” is not a length" in answer.content.decode()


@pytest.mark.parametrize("organs", [1, 4])
def test_finding_asks_as_often_for_many_organs_as_for_few(
    organist_client, django_assert_num_queries, organs
):
    for _ in range(organs):
        InstrumentFactory()

    with django_assert_num_queries(4):
        found(organist_client, length="8")
