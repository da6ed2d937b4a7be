import pytest

from instruments.queries import load_organ
from tests.builders import an_organ
from tests.factories import InstrumentFactory


@pytest.fixture
def row(db):
    return InstrumentFactory()


def order(client, row, kind, parts):
    return client.post(f"/organs/{row.pk}/order/", {"kind": kind, "part": parts})


def backwards(rows) -> list[int]:
    return list(rows.order_by("-position").values_list("pk", flat=True))


@pytest.mark.parametrize("kind", ["divisions", "couplers"])
def test_a_whole_list_is_put_in_another_order(director_client, row, kind):
    before = [one.id for one in getattr(load_organ(row.pk), kind)]

    order(director_client, row, kind, backwards(getattr(row, kind)))

    assert [one.id for one in getattr(load_organ(row.pk), kind)] == before[::-1]


def test_keyboards_are_put_in_the_order_in_which_they_lie(director_client, row):
    pks = {one.slug: one.pk for one in row.keyboards.all()}

    order(director_client, row, "keyboards", [pks["swell"], pks["great"], pks["pedal"]])

    organ = load_organ(row.pk)
    assert organ.console.keyboards == ("swell", "great", "pedal")
    assert organ.keyboards[0].id == "great"


def test_a_new_keyboard_lies_lowest_where_the_order_is_known(director_client, row):
    order(director_client, row, "keyboards", [one.pk for one in row.keyboards.all()])
    solo = {"name": "Solo", "kind": "manual", "compass": "C-c4"}
    director_client.post(f"/organs/{row.pk}/keyboards/add/", solo)

    assert load_organ(row.pk).console.keyboards[-1] == "solo"


def test_an_order_counts_a_revision(director_client, row):
    order(director_client, row, "couplers", backwards(row.couplers))

    row.refresh_from_db()
    assert row.revision == 2


def test_a_list_that_is_not_whole_changes_nothing_and_says_so(director_client, row):
    before = load_organ(row.pk)

    order(director_client, row, "couplers", backwards(row.couplers)[1:])

    assert load_organ(row.pk) == before
    page = director_client.get(f"/organs/{row.pk}/parts/").content.decode()
    assert "The list has changed meanwhile" in page


def test_stops_of_two_divisions_are_not_put_in_one_order(director_client, row):
    order(director_client, row, "stops", backwards(row.stops))

    assert load_organ(row.pk) == an_organ()


@pytest.mark.parametrize(("kind", "part"), [("stops", "x"), ("bells", "1"), ("stops", "0")])
def test_what_is_no_list_of_parts_is_not_found(director_client, row, kind, part):
    assert order(director_client, row, kind, [part]).status_code == 404
    assert order(director_client, row, kind, []).status_code == 404


def test_parts_of_another_organ_are_not_found(director_client, row):
    other = InstrumentFactory()

    assert order(director_client, row, "couplers", backwards(other.couplers)).status_code == 404


@pytest.mark.parametrize(("to", "expected"), [("up", 0), ("down", 2)])
def test_a_coupler_is_moved_a_place(director_client, row, to, expected):
    coupler = row.couplers.get(slug="swell-to-great-4")

    director_client.post(f"/parts/couplers/{coupler.pk}/move/", {"to": to})

    ids = [one.id for one in load_organ(row.pk).couplers]
    assert ids.index("swell-to-great-4") == expected


def test_the_first_stays_first_when_it_is_moved_up(director_client, row):
    first = row.couplers.first()

    director_client.post(f"/parts/couplers/{first.pk}/move/", {"to": "up"})

    assert load_organ(row.pk).couplers == an_organ().couplers


def test_tremulants_and_pistons_are_moved_too(director_client, row):
    swell = row.divisions.get(slug="swell")
    for name in ("Slow", "Fast"):
        director_client.post(f"/divisions/{swell.pk}/tremulants/add/", {"name": name})
    piston = {"name": "General", "kind": "general", "touch": "thumb", "several": 2}
    director_client.post(f"/organs/{row.pk}/pistons/add/", piston)
    director_client.post(f"/parts/tremulants/{swell.tremulants.last().pk}/move/", {"to": "up"})
    director_client.post(f"/parts/pistons/{row.pistons.last().pk}/move/", {"to": "up"})

    organ = load_organ(row.pk)
    assert [one.name for one in organ.division("swell").tremulants] == ["Fast", "Slow"]
    assert [one.name for one in organ.console.pistons] == ["General 2", "General 1"]


@pytest.mark.parametrize("kind", ["keyboards", "divisions"])
def test_what_still_has_something_is_not_removed_and_says_why(director_client, row, kind):
    part = getattr(row, kind).first()

    page = director_client.post(f"/parts/{kind}/{part.pk}/remove/", follow=True).content.decode()

    assert "Great was not removed. It still has" in page
    assert load_organ(row.pk) == an_organ()


def test_the_only_keyboard_is_not_removed(director_client):
    row = InstrumentFactory(organ=an_organ(great=["Principal 8"]))
    way = f"/parts/keyboards/{row.keyboards.get().pk}/remove/"

    assert "only keyboard" in director_client.post(way, follow=True).content.decode()


def test_an_empty_division_is_removed(director_client, row):
    director_client.post(f"/organs/{row.pk}/divisions/add/", {"name": "Echo"})

    director_client.post(f"/parts/divisions/{row.divisions.get(slug='echo').pk}/remove/")

    assert load_organ(row.pk).divisions == an_organ().divisions
