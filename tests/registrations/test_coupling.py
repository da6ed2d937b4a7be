import dataclasses
from itertools import product

import pytest

from instruments.compass import Compass
from instruments.organ import Coupling
from registrations.coupling import meet, routes
from tests.builders import an_organ


def ways(*couplers, coupling=Coupling.DIRECT, drawn=None, **organ):
    """Give (keyboard, division, semitones) of every route that passes a coupler."""
    built = an_organ(
        couplers=couplers, great=["Principal 8"], swell=["Oboe 8"], pedal=["Bourdon 16"], **organ
    )
    built = dataclasses.replace(built, coupling=coupling)
    drawn = frozenset(one.id for one in built.couplers) if drawn is None else drawn
    return {(one.keyboard, one.division, one.shift) for one in routes(built, drawn) if one.via}


def test_without_couplers_each_keyboard_plays_its_own_division():
    found = routes(an_organ(), frozenset())

    assert [(one.keyboard, one.division, one.shift, one.via) for one in found] == [
        (name, name, 0, ()) for name in ("great", "swell", "pedal")
    ]


def test_a_coupler_that_is_not_drawn_opens_nothing():
    assert ways("Swell to Great", drawn=frozenset()) == set()


def test_what_is_drawn_beside_couplers_is_passed_over():
    assert ways("Swell to Great", drawn=frozenset({"great/principal-8"})) == set()


@pytest.mark.parametrize(("figure", "shift"), [("", 0), (" 4", 12), (" 16", -12)])
def test_the_figure_of_a_coupler_says_which_key_it_moves(figure, shift):
    assert ways(f"Swell to Great{figure}") == {("great", "swell", shift)}


def test_unison_off_takes_the_home_keyboards_unison_away():
    organ = an_organ(great=["Principal 8"], couplers=["Great Unison Off"])

    assert routes(organ, frozenset({"great-unison-off"})) == ()


def test_direct_couplers_leave_a_coupled_divisions_octaves_and_unison_off_alone():
    found = ways("Swell to Great", "Swell to Swell 4", "Swell Unison Off")

    assert found == {("great", "swell", 0), ("swell", "swell", 12)}


def test_direct_couplers_do_not_reach_through_one_another():
    assert ways("Swell to Great", "Great to Pedal") == {
        ("great", "swell", 0),
        ("pedal", "great", 0),
    }


def test_read_through_the_sources_octaves_sound_from_the_coupled_keyboard():
    found = ways("Swell to Great", "Swell to Swell 4", coupling=Coupling.OCTAVES)

    assert found == {("great", "swell", 0), ("great", "swell", 12), ("swell", "swell", 12)}


def test_read_through_the_sources_unison_off_silences_the_coupled_unison():
    found = ways(
        "Swell to Great", "Swell to Swell 16", "Swell Unison Off", coupling=Coupling.OCTAVES
    )

    assert found == {("great", "swell", -12), ("swell", "swell", -12)}


def test_read_through_octaves_still_do_not_chain():
    found = ways("Swell to Great 4", "Great to Pedal", coupling=Coupling.OCTAVES)

    assert ("pedal", "swell", 12) not in found


def test_read_through_only_the_divisions_own_couplers_count():
    found = ways(
        "Swell to Great", "Solo to Swell 4", coupling=Coupling.OCTAVES, solo=[], floating=["solo"]
    )

    assert found == {("great", "swell", 0), ("swell", "solo", 12)}


def test_chained_keys_carry_what_is_coupled_to_them():
    found = ways("Swell to Great 4", "Great to Pedal", coupling=Coupling.CHAINED)

    assert found == {("great", "swell", 12), ("pedal", "great", 0), ("pedal", "swell", 12)}


def test_chained_keys_carry_a_floating_division():
    found = ways(
        "Solo to Swell",
        "Swell to Great",
        coupling=Coupling.CHAINED,
        solo=["Tuba 8"],
        floating=["solo"],
    )

    assert ("great", "solo", 0) in found


def test_chained_an_octave_coupler_works_once_on_a_way():
    found = ways("Swell to Swell 4", coupling=Coupling.CHAINED)

    assert found == {("swell", "swell", 12)}


def test_chained_unison_off_leaves_the_octave():
    found = ways(
        "Swell to Great", "Swell to Swell 4", "Swell Unison Off", coupling=Coupling.CHAINED
    )

    assert found == {("great", "swell", 12), ("swell", "swell", 12)}


def test_chained_a_key_that_a_keyboard_has_not_got_moves_nothing():
    organ = an_organ(
        great=["Principal 8"], swell=["Oboe 8"], couplers=["Swell to Great 4"], compass="C-g"
    )
    organ = dataclasses.replace(organ, coupling=Coupling.CHAINED)
    found = [one for one in routes(organ, frozenset({"swell-to-great-4"})) if one.via]

    assert [one.keys for one in found] == [Compass(0, 7)]


def test_chained_no_way_is_left_where_the_keys_do_not_meet():
    assert ways("Swell to Great 4", coupling=Coupling.CHAINED, compass="C-B") == set()


def test_chained_couplers_in_circles_at_every_octave_are_followed_to_an_end():
    names = ("Great", "Swell", "Choir", "Solo")
    couplers = [
        f"{source} to {target}{octave}"
        for source, target, octave in product(names, names, ("", " 4", " 16"))
        if source != target
    ]
    found = ways(*couplers, coupling=Coupling.CHAINED, choir=[], solo=[])

    assert {("great", name.lower(), shift) for name in names for shift in (12, 24, -12)} <= found


def test_keys_meet_where_both_have_them():
    short = Compass(0, 48, frozenset({1}))

    assert meet(Compass(0, 60), short, 12) == Compass(-12 + 12, 36, frozenset({-11}))
