from dataclasses import replace

import pytest

from instruments.queries import load_organ
from tests.builders import an_organ
from tests.factories import InstrumentFactory


@pytest.fixture
def row(db):
    return InstrumentFactory()


STOP = {"name": "Principal", "length": "4", "ranks": 1, "family": "principal"}


def change_stop(client, stop, **facts):
    return client.post(
        f"/stops/{stop.pk}/change/", {**STOP, "construction": stop.construction, **facts}
    )


def names(things) -> list[str]:
    return [one.name for one in things]


def test_the_page_of_parts_shows_everything_and_the_revision(director_client, row):
    page = director_client.get(f"/organs/{row.pk}/parts/").content.decode()

    assert all(word in page for word in ("Revision 1", "Fifteenth", "Swell to Great", "C-c4"))
    assert "Nobody has said yet which keyboard lies on top" in page


@pytest.mark.parametrize("stops", [2, 60])
def test_the_page_of_parts_asks_as_often_for_many_stops_as_for_few(
    director_client, django_assert_num_queries, stops
):
    row = InstrumentFactory(organ=an_organ(great=[f"Flute{n} 8" for n in range(stops)]))

    with django_assert_num_queries(11):
        director_client.get(f"/organs/{row.pk}/parts/")


@pytest.mark.parametrize("way", ["parts", "facts", "jamb", "keyboards/new", "pistons/new"])
def test_an_organist_reads_but_does_not_change(organist_client, row, way):
    assert organist_client.get(f"/organs/{row.pk}/{way}/").status_code == 403


def test_the_organ_as_a_whole_is_changed(director_client, row):
    facts = {
        "name": "St Werrin",
        "pitch_hz": "415",
        "temperament": "Vallotti",
        "coupling": "chained",
        "accessories": "Zimbelstern\r\n\r\n Nightingale \r\n",
        "notes": "Wind 3 inches.\r\nBuilt 1873.",
    }
    director_client.post(f"/organs/{row.pk}/change/", facts)

    organ = load_organ(row.pk)
    assert (organ.name, organ.pitch_hz, organ.temperament) == ("St Werrin", 415, "Vallotti")
    assert organ.accessories == ("Zimbelstern", "Nightingale")
    assert organ.notes == "Wind 3 inches.\nBuilt 1873."


def test_a_temperament_that_is_not_in_the_list_is_named(director_client, row):
    facts = {"name": "One", "pitch_hz": "440", "coupling": "direct", "temperament": ""}
    director_client.post(f"/organs/{row.pk}/change/", {**facts, "another": "Neidhardt 1724"})

    page = director_client.get(f"/organs/{row.pk}/facts/").content.decode()
    assert load_organ(row.pk).temperament == "Neidhardt 1724"
    assert 'value="Neidhardt 1724"' in page


@pytest.mark.parametrize(
    "wrong",
    [{"temperament": ""}, {"accessories": "x" * 201}, {"notes": "\x07"}, {"pitch_hz": "12"}],
)
def test_facts_that_cannot_be_are_refused_in_words(director_client, row, wrong):
    facts = {"name": "One", "pitch_hz": "440", "coupling": "direct", "temperament": "equal"}

    answer = director_client.post(f"/organs/{row.pk}/change/", {**facts, **wrong})

    assert answer.status_code == 422
    assert 'role="alert"' in answer.content.decode()


def test_a_keyboard_is_added_changed_and_removed(director_client, row):
    solo = {"name": "Solo", "kind": "manual", "compass": "C-c4"}
    director_client.post(f"/organs/{row.pk}/keyboards/add/", solo)
    made = row.keyboards.get(slug="solo")
    director_client.post(f"/keyboards/{made.pk}/change/", {**solo, "compass": "C-a3"})

    assert load_organ(row.pk).keyboard("solo").compass.high == 57
    director_client.post(f"/parts/keyboards/{made.pk}/remove/")
    assert names(load_organ(row.pk).keyboards) == ["Great", "Swell", "Pedal"]


def test_a_keyboard_with_a_compass_that_is_none_is_refused(director_client, row):
    facts = {"name": "Solo", "kind": "manual", "compass": "up and down"}

    added = director_client.post(f"/organs/{row.pk}/keyboards/add/", facts)
    changed = director_client.post(f"/keyboards/{row.keyboards.first().pk}/change/", facts)

    assert (added.status_code, changed.status_code) == (422, 422)


def test_a_division_is_added_floating_and_gets_a_home(director_client, row):
    director_client.post(f"/organs/{row.pk}/divisions/add/", {"name": "Echo"})
    made = row.divisions.get(slug="echo")
    assert load_organ(row.pk).division("echo").keyboard is None

    facts = {"name": "Solo", "keyboard": row.keyboards.get(slug="swell").pk, "enclosed": "on"}
    director_client.post(f"/divisions/{made.pk}/change/", facts)

    solo = load_organ(row.pk).division("echo")
    assert (solo.name, solo.keyboard, solo.enclosed) == ("Solo", "swell", True)


def test_a_division_without_a_name_is_refused(director_client, row):
    added = director_client.post(f"/organs/{row.pk}/divisions/add/", {"name": ""})
    changed = director_client.post(f"/divisions/{row.divisions.first().pk}/change/", {"name": ""})

    assert (added.status_code, changed.status_code) == (422, 422)


def test_two_divisions_of_one_name_have_ids_of_their_own(director_client, row):
    for _ in range(2):
        director_client.post(f"/organs/{row.pk}/divisions/add/", {"name": "Echo"})

    assert [one.id for one in load_organ(row.pk).divisions[3:]] == ["echo", "echo-2"]


def test_a_stop_moves_to_the_end_of_another_division(director_client, row):
    principal = row.stops.get(slug="great/principal-4")

    change_stop(director_client, principal, division=row.divisions.get(slug="swell").pk)

    assert load_organ(row.pk).division("swell").stops[-1].id == "great/principal-4"


def test_a_stop_borrows_pipes_and_shares_a_rank(director_client, row):
    bourdon = row.stops.get(slug="pedal/bass-flute-8")
    lender = "pedal/bourdon-16"
    change_stop(director_client, bourdon, borrowed_from=lender, rank="Bourdon unit", half="bass")

    stop = load_organ(row.pk).division("pedal").stops[-1]
    assert (stop.borrowed_from, stop.rank, stop.half) == (lender, "Bourdon unit", "bass")


def test_two_stops_do_not_borrow_from_each_other(director_client, row):
    bourdon, flute = row.divisions.get(slug="pedal").stops.all()
    change_stop(director_client, flute, borrowed_from=bourdon.slug)

    answer = change_stop(director_client, bourdon, borrowed_from=flute.slug)

    assert answer.status_code == 422
    assert "borrows from this one" in answer.content.decode()


def test_the_breaks_of_a_mixture_are_written_a_zone_a_line(director_client, row):
    mixture = row.stops.get(slug="great/mixture-19-22-26")
    zones = "C 19.22.26.29\r\nc 15.19.22\r\nc1 2 2/3, 2, 1 1/3"
    change_stop(director_client, mixture, length="", zones=zones)

    (stop,) = (one for _, one in load_organ(row.pk).stops() if one.id == mixture.slug)
    assert (len(stop.composition), stop.ranks) == (3, 4)
    page = director_client.get(f"/stops/{mixture.pk}/facts/").content.decode()
    assert "C 19.22.26.29\nc 15.19.22\nc1 12.15.19" in page


def test_a_composition_that_is_none_is_refused_with_its_line(director_client, row):
    mixture = row.stops.get(slug="great/mixture-19-22-26")

    answer = change_stop(director_client, mixture, length="", zones="C 19.22\nc loud")

    assert answer.status_code == 422
    assert "Line 2: “loud” is no rank." in answer.content.decode()


def test_a_mixture_of_which_only_the_ranks_are_known_is_kept(director_client, row):
    mixture = row.stops.get(slug="great/mixture-19-22-26")

    answer = change_stop(director_client, mixture, length="", ranks=3)

    assert answer.status_code == 302
    assert load_organ(row.pk).division("great").stops[4].composition == ()


def test_a_tremulant_is_renamed(director_client, row):
    swell = row.divisions.get(slug="swell")
    director_client.post(f"/divisions/{swell.pk}/tremulants/add/", {})
    made = swell.tremulants.get()
    director_client.post(f"/tremulants/{made.pk}/change/", {"name": "Vibrato"})

    assert names(load_organ(row.pk).division("swell").tremulants) == ["Vibrato"]
    assert director_client.post(f"/tremulants/{made.pk}/change/", {"name": ""}).status_code == 422


def test_a_coupler_is_changed(director_client, row):
    coupler = row.couplers.first()
    facts = {"name": "Sub", "source": coupler.source_id, "target": coupler.target_id, "octave": 16}
    director_client.post(f"/couplers/{coupler.pk}/change/", facts)

    made = load_organ(row.pk).couplers[0]
    assert (made.id, made.name, made.octave) == ("swell-to-great", "Sub", 16)
    wrong = director_client.post(f"/couplers/{coupler.pk}/change/", {**facts, "octave": 5})
    assert wrong.status_code == 422


def test_every_form_of_a_part_opens(director_client, row):
    parts = {"keyboards": row.keyboards, "divisions": row.divisions, "couplers": row.couplers}
    ways = [f"/{kind}/{rows.first().pk}/facts/" for kind, rows in parts.items()]
    ways += [f"/organs/{row.pk}/{kind}/new/" for kind in (*parts, "pistons")]

    assert {director_client.get(way).status_code for way in ways} == {200}


def test_a_name_with_markup_is_shown_as_written(director_client, row):
    loud = replace(an_organ(), name="<script>alert(1)</script>", notes="<b>")
    other = InstrumentFactory(organ=loud)

    page = director_client.get(f"/organs/{other.pk}/").content.decode()

    assert "<script>alert" not in page
    assert "&lt;b&gt;" in page
