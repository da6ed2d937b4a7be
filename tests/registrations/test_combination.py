import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from registrations.combination import (
    Combination,
    CombinationFileError,
    Hands,
    Music,
    Player,
    Texture,
    parse_combination,
)
from tests.builders import an_organ

ORGAN = an_organ(great=["Principal 8", "Octave 4"], swell=["Oboe 8"], couplers=["Swell to Great"])
DRAWN = ["great/principal-8", "swell-to-great"]
KEYBOARDS = st.none() | st.sampled_from(["great", "swell"])


def read(**data: object) -> tuple[Combination, Music]:
    return parse_combination(json.dumps({"drawn": DRAWN, **data}), ORGAN)


def refusal(text: str) -> str:
    with pytest.raises(CombinationFileError) as refused:
        parse_combination(text, ORGAN)
    return str(refused.value)


def test_what_is_drawn_is_read_and_the_rest_has_its_usual_value():
    assert read() == (Combination(frozenset(DRAWN)), Music())


@pytest.mark.parametrize("empty", [{}, {"hands": None, "piece": None}, {"hands": {}, "piece": {}}])
def test_hands_and_piece_may_be_left_out(empty):
    combination, music = read(**empty)

    assert not combination.hands
    assert music == Music("", Texture.CHORDS, "", Player.RIGHT)


@given(st.builds(Hands, KEYBOARDS, KEYBOARDS, KEYBOARDS))
def test_hands_are_read_as_they_were_written(hands):
    combination, _ = read(hands={player: hands.on(player) for player in Player})

    assert combination.hands == hands


@given(st.builds(Music, st.text(), st.sampled_from(Texture), st.text(), st.sampled_from(Player)))
def test_a_piece_is_read_as_it_was_written(music):
    piece = {name: getattr(music, name) for name in Music.__slots__}

    _, read_again = read(piece=piece)

    assert read_again == music


def test_what_else_is_known_of_a_piece_does_no_harm():
    _, music = read(piece={"key": "c minor", "verses": 4})

    assert music == Music(key="c minor")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("{", "The combination: This is not JSON: line 1"),
        ("[]", 'The combination needs "drawn"'),
        ("{}", 'The combination needs "drawn"'),
        ('{"drawn": "great"}', 'The combination needs "drawn"'),
        ('{"drawn": [1]}', 'The combination needs "drawn"'),
        ('{"drawn": ["great/flute-8"]}', "This organ has no “great/flute-8” to draw."),
    ],
)
def test_a_file_without_a_list_of_known_ids_is_refused(text, sentence):
    assert refusal(text).startswith(sentence)


@pytest.mark.parametrize(
    ("hands", "sentence"),
    [
        ([], '"hands" must be like'),
        ("great", '"hands" must be like'),
        ({"nose": "great"}, "“nose” is not right, left or feet."),
        ({"left": "choir"}, "“left” plays “choir”: this organ has no such keyboard."),
        ({"left": ["great"]}, "“left” plays “['great']”: this organ has no such keyboard."),
    ],
)
def test_hands_on_no_keyboard_are_refused(hands, sentence):
    assert refusal(json.dumps({"drawn": [], "hands": hands})).startswith(sentence)


@pytest.mark.parametrize(
    ("piece", "sentence"),
    [
        ("hymn", '"piece" must be like'),
        ({"key": 5}, '"piece" must be like'),
        ({"texture": ["solo"]}, '"piece" must be like'),
        ({"texture": "duet"}, 'In "piece": “duet” is not one of chords, solo, trio.'),
        ({"solo": "nose"}, 'In "piece": “nose” is not one of right, left, feet.'),
    ],
)
def test_a_piece_in_other_words_is_refused(piece, sentence):
    assert refusal(json.dumps({"drawn": [], "piece": piece})).startswith(sentence)


def test_drawing_and_putting_in_leaves_the_hands_where_they_are():
    hands = Hands(right="great")
    before = Combination(frozenset({"a", "b"}), hands)

    after = before.moved(frozenset({"c"}), frozenset({"a", "x"}))

    assert after == Combination(frozenset({"b", "c"}), hands)


def test_the_keyboards_that_are_played_are_each_counted_once():
    hands = Hands("great", "great", "pedal")

    assert hands
    assert hands.keyboards() == {"great", "pedal"}
    assert Hands().keyboards() == frozenset()
