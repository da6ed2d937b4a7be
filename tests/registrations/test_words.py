import pytest

from instruments.compass import Compass
from instruments.organ import Keyboard, KeyboardKind
from registrations.checks.words import brings, capital, listed, on, stop_words, stops_words, the
from tests.builders import a_coupler, a_stop

GREAT = Keyboard("great", "Great", KeyboardKind.MANUAL, Compass(0, 60))


@pytest.mark.parametrize(
    ("words", "spoken"), [(["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")]
)
def test_a_list_is_joined_as_speech_does(words, spoken):
    assert listed(words) == spoken


def test_a_stop_is_named_with_its_pitch_and_a_mixture_without():
    assert stop_words(a_stop("Twelfth 2 2/3")) == "Twelfth 2⅔′"
    assert stop_words(a_stop("Mixture 19.22")) == "Mixture"


def test_two_stops_of_one_name_and_pitch_are_named_once():
    assert stops_words([a_stop("Flute 4"), a_stop("Flute 4", id="swell/flute")]) == "Flute 4′"


@pytest.mark.parametrize(
    ("count", "words"), [(5, "A, B, C, D and E"), (7, "A, B, C, D and 3 others")]
)
def test_of_many_stops_the_first_are_named_and_the_others_counted(count, words):
    stops = [a_stop(letter) for letter in "ABCDEFG"[:count]]

    assert stops_words(stops) == words


@pytest.mark.parametrize("name", ["Manual II", "III", "2", "Manuale I", "Clavier 3"])
def test_a_numbered_keyboard_takes_no_article(name):
    assert the(name) == name


@pytest.mark.parametrize("name", ["Great", "Pedal", "Manual", "Vox", "Positive"])
def test_a_named_keyboard_takes_one(name):
    assert the(name) == f"the {name}"


@pytest.mark.parametrize(
    ("keys", "where"),
    [
        (None, "On the Great,"),
        ((0, 60), "On the Great,"),
        ((0, 11), "On the Great, from C to B,"),
        ((30, 30), "On the Great, at f♯1,"),
    ],
)
def test_a_place_names_its_keys_only_where_they_are_not_all(keys, where):
    assert on(GREAT, keys) == where


def test_a_sentence_begins_with_a_capital_and_keeps_the_rest():
    assert capital("the Great") == "The Great"


@pytest.mark.parametrize(
    ("ids", "spoken"),
    [
        (["swell-to-great"], "Swell to Great brings"),
        (["solo-to-great", "swell-to-great"], "Swell to Great and Solo to Great bring"),
    ],
)
def test_couplers_bring_what_they_carry(ids, spoken):
    drawn = [a_coupler("Swell to Great"), a_coupler("Solo to Great"), a_coupler("Great to Pedal")]

    assert brings(drawn, ids) == spoken
