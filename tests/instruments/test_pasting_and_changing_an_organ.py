import json

import pytest

from instruments.actions import save_organ
from instruments.models import Instrument
from instruments.organfile import organ_from_dict
from instruments.queries import load_organ
from tests.builders import an_organ
from tests.factories import InstrumentFactory

LIST = """St Werrin, Hollowby

GREAT
Open Diapason 8
Principal 4
Twelfth 2 2/3
Mixture III 15.19.22

SWELL
Stopped Diapason 8
Tremulant

Swell to Great
what is this line doing here, one wonders?
"""


def test_a_stored_organ_comes_back_equal(db):
    organ = an_organ()

    assert load_organ(save_organ(organ).pk) == organ


@pytest.mark.parametrize("stops", [2, 80])
def test_loading_takes_eight_queries_however_many_stops(db, django_assert_num_queries, stops):
    row = save_organ(an_organ(great=[f"Flute{n} 8" for n in range(stops)]))

    with django_assert_num_queries(8):
        load_organ(row.pk)


def test_a_pasted_list_is_shown_before_it_is_saved(director_client):
    page = director_client.post("/organs/read/", {"text": LIST}).content.decode()

    assert "5 stops understood" in page
    assert 'class="unread"' in page
    assert not Instrument.objects.exists()


def test_htmx_gets_the_reading_alone(director_client):
    answer = director_client.post("/organs/read/", {"text": LIST}, headers={"HX-Request": "true"})

    assert answer.content.decode().lstrip().startswith('<div id="reading"')


def test_a_pasted_list_becomes_an_organ(director_client):
    director_client.post("/organs/keep/", {"text": LIST, "name": "The Hollowby organ"})

    organ = load_organ(Instrument.objects.get().pk)
    assert organ.name == "The Hollowby organ"
    assert [one.name for one in organ.divisions] == ["Great", "Swell"]
    assert [one.name for one in organ.couplers] == ["Swell to Great"]


@pytest.mark.parametrize("text", ["", "   ", "no stops at all", "\x00\x01\x02", "x" * 300_000])
def test_text_that_is_no_stop_list_is_refused_in_words(director_client, text):
    answer = director_client.post("/organs/read/", {"text": text})

    assert answer.status_code == 422
    assert 'role="alert"' in answer.content.decode()


def test_an_organ_page_says_what_is_heard(organist_client):
    row = InstrumentFactory()

    page = organist_client.get(f"/organs/{row.pk}/").content.decode()

    assert "an octave and a fifth higher" in page
    assert "2 cents sharp" in page
    assert "The Great keyboard also plays the Swell" in page


def test_an_organ_file_is_handed_out_and_reads_back(organist_client):
    row = InstrumentFactory()

    answer = organist_client.get(f"/organs/{row.pk}/organ.json")

    assert organ_from_dict(json.loads(answer.content)) == load_organ(row.pk)


def test_a_stop_is_added_with_an_id_of_its_own(director_client):
    division = InstrumentFactory().divisions.get(slug="great")
    stop = {"name": "Open Diapason", "length": "8", "ranks": 1, "family": "principal"}
    for _ in range(2):
        director_client.post(
            f"/divisions/{division.pk}/stops/add/", {**stop, "construction": "open"}
        )

    slugs = list(division.stops.values_list("slug", flat=True))
    assert slugs[-2:] == ["great/open-diapason-8-2", "great/open-diapason-8-3"]


def test_a_mixture_is_added_by_its_counts(director_client):
    division = InstrumentFactory().divisions.get(slug="swell")
    stop = {"name": "Mixture", "zones": "15.19.22", "ranks": 1, "family": "principal"}
    director_client.post(f"/divisions/{division.pk}/stops/add/", {**stop, "construction": "open"})

    row = division.stops.last()
    assert row.composition == [{"from": "C", "lengths": ["2", "1 1/3", "1"]}]
    assert row.ranks == 3


@pytest.mark.parametrize(
    "wrong", [{"length": "eight"}, {"length": ""}, {"compass": "loud"}, {"name": ""}]
)
def test_a_stop_that_cannot_be_is_refused(director_client, wrong):
    row = InstrumentFactory().stops.get(slug="great/principal-4")
    stop = {"name": "Principal", "length": "4", "ranks": 1, "family": "principal"}

    answer = director_client.post(
        f"/stops/{row.pk}/change/", {**stop, "construction": "open", **wrong}
    )

    assert answer.status_code == 422
    row.refresh_from_db()
    assert row.length == "4"


def test_a_change_to_a_stop_counts_a_revision(director_client):
    row = InstrumentFactory().stops.get(slug="great/principal-4")
    stop = {"name": "Octave", "length": "4'", "ranks": 1, "family": "principal"}
    director_client.post(f"/stops/{row.pk}/change/", {**stop, "construction": "open"})

    row.refresh_from_db()
    assert (row.name, row.length, row.instrument.revision) == ("Octave", "4", 2)


def test_stops_are_reordered_within_their_division(director_client):
    instrument = InstrumentFactory()
    principal = instrument.stops.get(slug="great/principal-4")

    director_client.post(f"/parts/stops/{principal.pk}/move/", {"to": "up"})

    assert load_organ(instrument.pk).division("great").stops[0].name == "Principal"


def test_stops_couplers_and_tremulants_are_added_and_removed(director_client):
    instrument = InstrumentFactory()
    swell, great = (instrument.divisions.get(slug=slug) for slug in ("swell", "great"))
    coupler = {"name": "Sub", "source": swell.pk, "target": great.keyboard_id, "octave": 16}
    director_client.post(f"/divisions/{swell.pk}/tremulants/add/", {"name": "Tremulant"})
    director_client.post(f"/organs/{instrument.pk}/couplers/add/", coupler)

    assert load_organ(instrument.pk).couplers[-1].octave == 16
    tremulant, made = instrument.tremulants.get(), instrument.couplers.last()
    director_client.post(f"/parts/tremulants/{tremulant.pk}/remove/")
    director_client.post(f"/parts/couplers/{made.pk}/remove/")
    director_client.post(f"/parts/stops/{great.stops.first().pk}/remove/")
    assert load_organ(instrument.pk).control_ids() == an_organ().control_ids() - {
        "great/open-diapason-8"
    }
