import csv
import re
import tomllib
from collections import Counter
from dataclasses import replace
from datetime import date, timedelta

import pytest
import time_machine
from django.core.management import call_command
from pypdf import PdfReader

from instruments.models import Instrument
from instruments.stoplist import read_stoplist
from registrations.checks.findings import Level
from registrations.demo import parish
from registrations.demo.actions import load_demo
from registrations.models import Change, Drawn, Registration
from registrations.queries import registrations_of
from registrations.registration import Registration as RegistrationValue
from registrations.review import review
from services.models import Item, Person, Piece, Service

TODAY = date(2026, 11, 25)
ROWS = (Change, Drawn, Instrument, Item, Person, Piece, Registration, Service)


def findings(planned):
    for item in planned.items:
        for found in review(RegistrationValue(parish.organs()[item.organ], item.changes)):
            yield from found


@pytest.mark.parametrize(("name", "least", "most"), [("all_hallows", 38, 44), ("chamber", 5, 7)])
def test_its_organs_are_read_from_their_stop_lists_without_a_line_lost(name, least, most):
    reading = read_stoplist(parish.organ_text(name))

    assert reading.unread == ()
    assert least <= len(list(reading.organ.stops())) <= most


def test_every_stop_of_its_organs_is_known_by_name():
    guessed = [
        one.what
        for name in parish.ORGANS
        for one in read_stoplist(parish.organ_text(name)).assumed
        if "lexicon" in one.what or "taken for" in one.what
    ]

    assert guessed == []


@pytest.mark.parametrize(
    "today", [TODAY + timedelta(days=after) for after in range(7)] + [date(2028, 2, 29)]
)
def test_six_weeks_are_planned_whatever_the_day(today):
    services = parish.services_from(today)

    assert len(services) == 18
    assert services[0].day.strftime("%A") == "Sunday"
    assert 0 <= (services[0].day - today).days < 7
    assert [one.day for one in services] == sorted(one.day for one in services)


def test_no_hymn_is_sung_twice_in_six_weeks():
    sung = Counter(
        item.piece.title
        for planned in parish.services_from(TODAY)
        for item in planned.items
        if item.piece.kind == "hymn"
    )

    assert len(sung) == 48
    assert set(sung.values()) == {1}


def test_no_tune_is_sung_twice_in_six_weeks():
    tunes = Counter(
        item.piece.tune
        for planned in parish.services_from(TODAY)
        for item in planned.items
        if item.piece.kind == "hymn"
    )

    assert [tune for tune, sung in tunes.items() if sung > 1] == []


def test_the_library_holds_sixty_hymns_and_says_where_its_facts_come_from():
    library = parish.library()

    assert sum(piece.kind == "hymn" for piece, _ in library.values()) >= 60
    assert sum(piece.kind != "hymn" for piece, _ in library.values()) >= 25
    assert all(source for _, source in library.values())


def test_nothing_that_belongs_to_a_season_is_planned():
    with (parish.HERE / "pieces.csv").open(encoding="utf-8", newline="") as file:
        seasons = {row["title"]: row["season"] for row in csv.DictReader(file)}
    planned = {item.piece.title for one in parish.services_from(TODAY) for item in one.items}

    assert [title for title in planned if seasons[title]] == []
    assert {"Advent", "Christmas", "Passiontide", "Easter"} <= set(seasons.values())


def test_the_library_tells_what_was_read_from_what_is_remembered():
    read = {
        piece.tune: source for piece, source in parish.library().values() if source != "from memory"
    }

    assert sorted(read) == ["AURELIA", "EIN' FESTE BURG", "HANOVER", "NICAEA"]
    assert all("1906; the rest from memory" in source for source in read.values())


def test_no_canticles_and_no_anthem_are_sung_twice():
    sung = [
        item.piece.title
        for planned in parish.services_from(TODAY)
        for item in planned.items
        if item.piece.kind in {"canticle", "anthem", "psalm"}
    ]

    assert len(sung) == len(set(sung)) == 18


def test_every_pattern_is_used():
    plan, patterns = (
        tomllib.loads((parish.HERE / name).read_text(encoding="utf-8"))
        for name in ("plan.toml", "patterns.toml")
    )
    slots = [slot for service in plan["service"] for slot in service["slot"]]
    used = {name for slot in slots for name in (slot["pattern"], *slot.get("changed", {}).values())}

    assert used == set(patterns)


def test_every_key_in_the_library_is_written_as_keys_are():
    keys = {piece.key for piece, _ in parish.library().values()}

    assert [
        key for key in keys if not re.fullmatch(r"[A-G][b#]? (major|minor|phrygian)", key)
    ] == []


def test_every_item_is_registered_with_what_its_organ_has():
    for planned in parish.services_from(TODAY):
        for item in planned.items:
            drawn = frozenset().union(*(one.combination.drawn for one in item.changes))
            assert item.changes
            assert drawn <= parish.organs()[item.organ].control_ids()


def test_a_hymn_has_a_change_for_each_verse():
    items = [item for planned in parish.services_from(TODAY) for item in planned.items]
    hymns = [item for item in items if item.piece.kind == "hymn"]

    for hymn in hymns:
        verses = hymn.piece.verses
        cues = [f"Verse {number}" for number in range(2, verses)]
        expected = ["Play-over and verse 1", *cues, f"Verse {verses} (last)"]
        assert [one.cue for one in hymn.changes] == expected


def test_the_coming_service_has_two_oversights_and_the_others_none():
    coming, *later = parish.services_from(TODAY)

    assert sorted(one.rule for one in findings(coming)) == ["silent-coupler", "tremulant-on-chorus"]
    assert [
        one for planned in later for one in findings(planned) if one.level != Level.ADVICE
    ] == []


@pytest.mark.django_db
def test_the_whole_parish_is_stored():
    load_demo(TODAY)

    planned = parish.services_from(TODAY)
    changes = [change for one in planned for item in one.items for change in item.changes]
    assert Service.objects.count() == len(planned)
    assert Item.objects.count() == sum(len(one.items) for one in planned)
    assert Change.objects.count() == len(changes)
    assert Drawn.objects.count() == sum(len(one.combination.drawn) for one in changes)
    assert Piece.objects.count() == len(parish.library())
    assert {(one.name, one.role) for one in Person.objects.all()} == set(parish.people())
    assert not Person.objects.filter(user=None).exists()


@pytest.mark.django_db
def test_a_parish_that_cannot_be_stored_whole_is_not_stored_at_all(monkeypatch):
    planned = parish.services_from(TODAY)
    nobody = replace(planned[-1].items[-1], player="Nobody")
    broken = (*planned[:-1], replace(planned[-1], items=(nobody,)))
    monkeypatch.setattr(parish, "services_from", lambda today: broken)

    with pytest.raises(KeyError):
        load_demo(TODAY)
    assert [model.objects.count() for model in ROWS] == [0] * len(ROWS)


@pytest.mark.django_db
def test_a_stored_registration_is_the_planned_one():
    load_demo(TODAY)
    coming = parish.services_from(TODAY)[0]
    rows = Service.objects.earliest("day", "starts").items.all()

    stored = registrations_of(row.pk for row in rows)
    for row, planned in zip(rows, coming.items, strict=True):
        assert stored[row.pk].changes == planned.changes
        assert stored[row.pk].organ == parish.organs()[planned.organ]


def test_its_people_have_the_three_roles():
    assert {role for _, role in parish.people()} == {"director", "organist", "printer"}


@pytest.fixture
def quickstart(db, settings, tmp_path, capsys):
    settings.VAR_DIR = tmp_path

    def run(*words):
        with time_machine.travel(TODAY, tick=False):
            call_command("quickstart", "--no-server", *words)
        return capsys.readouterr().out

    return run


def test_quickstart_checks_the_coming_service_and_writes_its_cards(quickstart, tmp_path):
    told = quickstart()

    (cards,) = (tmp_path / "cards").glob("*.pdf")
    text = re.sub(r"\s+", " ", " ".join(one.extract_text() for one in PdfReader(cards).pages))
    assert "Swell to Great is drawn but carries nothing" in told
    assert str(cards) in told
    assert "/welcome/" in told
    for item in Service.objects.first().items.all():
        for drawn in Drawn.objects.filter(change__registration__item=item):
            stops = item.instrument.stops.filter(slug=drawn.control)
            assert all(re.sub(r" [IVX]+$", "", stop.name) in text for stop in stops)


def test_quickstart_run_again_changes_nothing(quickstart, tmp_path):
    quickstart()
    counts = [model.objects.count() for model in ROWS]
    (cards,) = (tmp_path / "cards").glob("*.pdf")
    bytes_before = cards.read_bytes()

    told = quickstart()

    assert "demo parish" not in told
    assert [model.objects.count() for model in ROWS] == counts
    assert cards.read_bytes() == bytes_before


def test_an_empty_book_says_how_to_add_somebody(quickstart):
    told = quickstart("--no-demo")

    assert "No service is planned yet." in told
    assert "manage.py addperson" in told
    assert not Person.objects.exists()
