from dataclasses import replace

import pytest

from registrations.checks.findings import Level
from registrations.guide import combination_of, entry_of, guide
from tests.builders import an_organ
from tests.registrations.guides import CHAMBER, ORGANS, PARISH, TOWN, names, said

EVERY_ORGAN = pytest.mark.parametrize("organ", ORGANS, ids=["parish", "chamber", "town"])


@EVERY_ORGAN
def test_every_stop_is_in_the_guide_in_console_order(organ):
    assert [one.stop for one in guide(organ)] == [stop for _, stop in organ.stops()]


@EVERY_ORGAN
def test_one_entry_is_the_one_in_the_guide(organ):
    assert all(entry_of(organ, one.stop.id) == one for one in guide(organ))


@EVERY_ORGAN
def test_every_stop_on_its_ground_is_quiet_or_says_what_remains(organ):
    assert all(said(organ, one) == one.ground.still for one in guide(organ) if one.place)


@EVERY_ORGAN
def test_everything_good_with_a_stop_really_adds_no_finding(organ):
    proven = 0
    for entry in guide(organ):
        known = {(one.rule, one.level) for one in entry.ground.still}
        for companion in entry.good_with:
            found = {(one.rule, one.level) for one in said(organ, entry, companion)}
            assert found <= known
            proven += 1

    assert proven


@EVERY_ORGAN
def test_everything_to_avoid_really_raises_what_the_guide_says(organ):
    for entry in guide(organ):
        for clash in (*entry.avoid, *entry.care):
            found = said(organ, entry, clash.companion)
            assert clash.message in {one.message for one in found if one.rule == clash.rule}


@EVERY_ORGAN
def test_every_other_stop_in_reach_is_judged_once(organ):
    for entry in guide(organ):
        judged = [*entry.good_with, *(one.companion for one in (*entry.avoid, *entry.care))]
        stops = [one.stop for one in judged]
        own = [one for one in entry.division.stops if one not in (entry.stop, *entry.ground.needs)]
        assert len(stops) == len(set(stops))
        assert not entry.place or set(own) <= set(stops)


def test_a_companion_brings_the_least_it_needs():
    entry = entry_of(PARISH, "great/open-diapason-8")

    brought = {one.stop.name: names(one.needs) for one in entry.good_with}
    assert brought["Principal"] == []
    assert brought["Twelfth"] == ["Principal"]
    assert brought["Mixture"] == ["Principal", "Fifteenth"]


def test_its_own_division_comes_first_and_others_through_couplers():
    entry = entry_of(PARISH, "great/open-diapason-8")

    ways = dict.fromkeys((one.division.id, one.coupler) for one in entry.good_with)
    assert [(name, way and way.id) for name, way in ways] == [
        ("great", None),
        ("swell", "swell-to-great"),
    ]


def test_two_divisions_of_one_keyboard_need_no_coupler():
    organ = an_organ(great=["Principal 8"], rear=["Flute 8 (flute)"])
    divisions = tuple(replace(one, keyboard="great") for one in organ.divisions)
    entry = entry_of(replace(organ, divisions=divisions), "great/principal-8")

    assert [(one.stop.name, one.coupler) for one in entry.good_with] == [("Flute", None)]


def test_a_celeste_is_kept_from_the_chorus():
    entry = entry_of(PARISH, "great/mixture-19-22-26")

    (clash,) = entry.avoid
    assert (clash.companion.stop.name, clash.rule) == ("Celeste", "celeste-in-chorus")
    assert clash.level is Level.WARNING
    assert clash.reason.startswith("A celeste is tuned a little sharp or flat on purpose")


def test_what_draws_only_advice_is_no_stop_to_avoid():
    entry = entry_of(CHAMBER, "great/gedackt-8")

    assert names(one.companion.stop for one in entry.care) == ["Zimbel"]
    assert entry.avoid == ()


def test_a_stop_that_no_keyboard_reaches_goes_with_nothing():
    entry = entry_of(TOWN, "echo/vox-humana-8")

    assert (entry.place, entry.good_with, entry.avoid) == (None, (), ())


def test_a_floating_stop_is_drawn_with_its_coupler():
    entry = entry_of(TOWN, "solo/tuba-8")

    assert combination_of(entry).drawn == {"solo/tuba-8", "solo-to-great"}


def test_a_stop_that_the_organ_does_not_have_is_no_entry():
    with pytest.raises(KeyError, match="great/kazoo"):
        entry_of(PARISH, "great/kazoo")
