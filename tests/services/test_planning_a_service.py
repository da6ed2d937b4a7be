from datetime import date, time

import pytest

from services.models import Item, Piece, Service
from tests.factories import (
    InstrumentFactory,
    ItemFactory,
    PersonFactory,
    PieceFactory,
    ServiceFactory,
)

SERVICE = {"day": "2026-12-06", "starts": "18:00", "title": "Evensong", "church": "St Werrin"}


def test_a_director_plans_a_service(director_client):
    director_client.post("/services/add/", SERVICE)

    row = Service.objects.get()
    assert (row.day, row.starts, row.title) == (date(2026, 12, 6), time(18, 0), "Evensong")


def test_a_service_without_a_title_is_refused_and_loses_nothing(director_client):
    answer = director_client.post("/services/add/", {**SERVICE, "title": ""})

    assert answer.status_code == 422
    assert "2026-12-06" in answer.content.decode()
    assert not Service.objects.exists()


def test_an_item_goes_to_the_end_of_the_order(director_client):
    first = ItemFactory(position=0)
    piece, player = PieceFactory(), PersonFactory()
    chosen = {"piece": piece.pk, "label": "Offertory", "player": player.pk}
    director_client.post(
        f"/services/{first.service_id}/items/add/", {**chosen, "instrument": InstrumentFactory().pk}
    )

    assert [item.label for item in first.service.items.all()] == ["Opening hymn", "Offertory"]


def test_items_can_be_moved(director_client):
    service = ServiceFactory()
    labels = ("Introit", "Hymn", "Voluntary")
    items = [
        ItemFactory(service=service, label=label, position=at) for at, label in enumerate(labels)
    ]

    director_client.post(f"/items/{items[2].pk}/move/", {"to": "earlier"})

    assert [item.label for item in service.items.all()] == ["Introit", "Voluntary", "Hymn"]


def test_an_item_can_be_removed(director_client):
    item = ItemFactory()

    director_client.post(f"/items/{item.pk}/remove/")

    assert not Item.objects.exists()


def test_the_order_is_shown_with_tune_key_and_player(organist_client):
    item = ItemFactory(player__name="Owen Reed")

    page = organist_client.get(f"/services/{item.service_id}/").content.decode()

    assert "ST ANNE · CM · W. Croft" in page
    assert "C major" in page
    assert "Owen Reed" in page


def test_a_piece_is_found_by_its_tune(organist_client):
    PieceFactory(title="O God, our help", tune="ST ANNE")
    PieceFactory(title="Abide with me", tune="EVENTIDE")

    found = organist_client.get("/pieces/?words=anne", headers={"HX-Request": "true"})

    assert "O God, our help" in found.content.decode()
    assert "Abide with me" not in found.content.decode()


def test_a_piece_that_stands_in_a_service_stays(director_client):
    item = ItemFactory()

    answer = director_client.post(f"/pieces/{item.piece_id}/remove/", follow=True)

    assert Piece.objects.exists()
    assert "stays" in answer.content.decode()


@pytest.mark.parametrize("words", ["", "100%", "'; drop table", "a " * 500])
def test_any_words_may_be_looked_for(organist_client, words):
    assert organist_client.get("/pieces/", {"words": words}).status_code == 200


def test_removing_a_service_says_what_went_with_it(director_client):
    service = ItemFactory().service

    answer = director_client.post(f"/services/{service.pk}/remove/", follow=True)

    assert "with its items" in answer.content.decode()
    assert not Service.objects.exists()
