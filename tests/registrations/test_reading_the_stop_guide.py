import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from instruments.models import Stop
from tests.builders import a_stop, an_organ
from tests.factories import InstrumentFactory
from tests.registrations.test_guidewords import BREAKING


@pytest.fixture
def organ(db):
    return InstrumentFactory()


def open_page(client, address):
    answer = client.get(address)
    assert answer.status_code == 200
    return answer.content.decode()


def test_a_learner_finds_every_stop_by_division(organist_client, organ):
    page = open_page(organist_client, f"/organs/{organ.pk}/guide/")

    assert [name for name in ("Great", "Swell", "Pedal") if f">{name}</h2>" not in page] == []
    for row in Stop.objects.filter(division__instrument=organ):
        assert f'href="/organs/{organ.pk}/guide/{row.slug}/"' in page
    assert "Draw it on Open Diapason 8′ and Principal 4′." in page


def test_a_learner_reads_about_one_stop(organist_client, organ):
    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/twelfth-2-2-3/")

    assert "you hear g2 (2 cents sharp), an octave and a fifth higher." in page
    assert "<b>Open Diapason 8′ and Principal 4′</b>" in page
    assert "Swell, through Swell to Great" in page
    assert "/rules/#celeste-in-chorus" in page


def test_the_ladder_is_a_picture_with_its_text(organist_client, organ):
    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/twelfth-2-2-3/")

    assert '<svg class="ladder" role="img"' in page
    assert "2⅔′, an octave and a fifth higher: Twelfth 2⅔′." in page
    assert "style=" not in page


def test_one_turns_from_stop_to_stop(organist_client, organ):
    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/trumpet-8/")

    assert f'rel="prev" href="/organs/{organ.pk}/guide/great/mixture-19-22-26/"' in page
    assert f'rel="next" href="/organs/{organ.pk}/guide/swell/stopped-diapason-8/"' in page


def test_the_first_stop_has_none_before_it_and_the_last_none_after(organist_client, organ):
    first = open_page(organist_client, f"/organs/{organ.pk}/guide/great/open-diapason-8/")
    last = open_page(organist_client, f"/organs/{organ.pk}/guide/pedal/bass-flute-8/")

    assert 'rel="prev"' not in first
    assert 'rel="next"' not in last


def test_a_mixture_shows_where_it_breaks(organist_client, db):
    value = an_organ(great=["Octave 4", a_stop("Mixture", composition=BREAKING)])
    organ = InstrumentFactory(organ=value)

    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/mixture/")
    assert "Its ranks break back as the keys go up: from C: 2′ and 1⅓′; from c1:" in page
    assert page.count('<svg class="ladder"') == 2


def test_ranks_that_are_assumed_are_said_to_be(organist_client, db):
    organ = InstrumentFactory(organ=an_organ(great=[a_stop("Mixture", ranks=3)]))

    assert "these are the usual ones" in open_page(
        organist_client, f"/organs/{organ.pk}/guide/great/mixture/"
    )


def test_a_stop_that_nothing_reaches_is_explained_too(organist_client, db):
    value = an_organ(great=["Octave 4"], echo=["Vox Humana 8 (reed short)"], floating=["echo"])
    organ = InstrumentFactory(organ=value)

    page = open_page(organist_client, f"/organs/{organ.pk}/guide/echo/vox-humana-8/")
    assert "No keyboard plays this division" in page
    assert "Goes with" not in page


def test_a_lonely_stop_goes_with_nothing(organist_client, db):
    organ = InstrumentFactory(organ=an_organ(great=["Principal 8"]))

    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/principal-8/")
    assert "No other stop goes with it" in page
    assert "nothing on this organ that spoils it" in page


def test_an_organ_without_stops_says_so(organist_client, db):
    organ = InstrumentFactory(organ=an_organ(great=[]))

    assert "no stops yet" in open_page(organist_client, f"/organs/{organ.pk}/guide/")


@pytest.mark.parametrize("name", ["great/kazoo", "<script>", "great"])
def test_a_stop_that_is_not_there_is_no_page(organist_client, organ, name):
    assert organist_client.get(f"/organs/{organ.pk}/guide/{name}/").status_code == 404


def test_an_organ_that_is_not_there_is_no_page(organist_client):
    assert organist_client.get("/organs/99999/guide/").status_code == 404


@pytest.mark.parametrize("address", ["guide/", "guide/great/trumpet-8/"])
def test_a_volunteer_who_prints_does_not_read_the_guide(printer_client, organ, address):
    assert printer_client.get(f"/organs/{organ.pk}/{address}").status_code == 403


def test_a_name_cannot_bring_a_script_along(organist_client, db):
    stop = a_stop("Flute 8 (flute)", name="<script>alert(1)</script>", id="flute-8")
    organ = InstrumentFactory(organ=an_organ(great=[stop, "Octave 4"]))

    page = open_page(organist_client, f"/organs/{organ.pk}/guide/great/flute-8/")
    assert "<script>alert" not in page


@pytest.mark.parametrize("address", ["guide/", "guide/great/trumpet-8/"])
def test_a_page_asks_the_database_for_the_organ_and_nothing_else(organist_client, organ, address):
    with CaptureQueriesContext(connection) as bare:
        organist_client.get(f"/organs/{organ.pk}/organ.json")
    with CaptureQueriesContext(connection) as guide:
        organist_client.get(f"/organs/{organ.pk}/{address}")

    assert len(guide) == len(bare)


def test_the_page_of_the_organ_leads_to_its_guide(organist_client, organ):
    assert f'href="/organs/{organ.pk}/guide/"' in open_page(organist_client, f"/organs/{organ.pk}/")
