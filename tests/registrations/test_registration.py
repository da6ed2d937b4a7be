from hypothesis import given
from hypothesis import strategies as st

from registrations.combination import Combination, Hands
from registrations.registration import Change, Moves, Registration, moves
from tests.builders import an_organ

COMBINATIONS = st.builds(Combination, st.frozensets(st.sampled_from("abcdefg")))


def test_nothing_moves_when_only_the_hands_do():
    before = Combination(frozenset("ab"), Hands(right="great"))
    after = Combination(frozenset("ab"), Hands(right="swell"))

    assert not moves(before, after)


def test_the_moves_of_a_change_are_counted():
    # Open 8, Principal 4, Fifteenth 2, Sw-Gt to Open 8, Stopped 8, Flute 4, Sw-Gt: four moves.
    before = Combination(frozenset({"open", "principal", "fifteenth", "sw-gt"}))
    after = Combination(frozenset({"open", "stopped", "flute", "sw-gt"}))

    between = moves(before, after)

    assert between == Moves(frozenset({"stopped", "flute"}), frozenset({"principal", "fifteenth"}))
    assert len(between) == 4


@given(COMBINATIONS, COMBINATIONS)
def test_the_moves_lead_from_one_combination_to_the_other(before, after):
    between = moves(before, after)

    assert before.moved(between.draw, between.put_in) == after


@given(COMBINATIONS, COMBINATIONS)
def test_the_way_back_has_the_same_moves_the_other_way_round(before, after):
    there, back = moves(before, after), moves(after, before)

    assert (there.draw, there.put_in) == (back.put_in, back.draw)


def test_a_registration_keeps_its_changes_in_order():
    changes = tuple(Change(cue, Combination()) for cue in ("Before it begins", "Verse 3"))

    registration = Registration(an_organ(), changes)

    assert [change.cue for change in registration.changes] == ["Before it begins", "Verse 3"]
