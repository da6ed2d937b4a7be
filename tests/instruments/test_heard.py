from fractions import Fraction

import pytest

from instruments.compass import MIDDLE_C, TENOR_C, Compass
from instruments.heard import lengths_of, notes, shown_key
from instruments.mixtures import Zone
from tests.builders import a_stop


def test_percussion_sounds_no_length():
    assert notes(a_stop("Chimes", "percussion"), MIDDLE_C) == ()


def test_a_unison_sounds_the_note_played():
    (note,) = notes(a_stop("Principal 8"), MIDDLE_C)

    assert (note.key, note.cents, note.interval) == (MIDDLE_C, 0, "at the note played")


def test_a_twelfth_sounds_an_octave_and_a_fifth_up_and_a_little_sharp_of_the_key():
    (note,) = notes(a_stop("Twelfth 2 2/3"), MIDDLE_C)

    assert note.key == MIDDLE_C + 19
    assert note.cents == pytest.approx(1.955, abs=0.001)
    assert note.interval == "an octave and a fifth higher"


def test_a_tierce_sounds_two_octaves_and_a_third_up():
    (note,) = notes(a_stop("Tierce 1 3/5"), MIDDLE_C)

    assert note.key == MIDDLE_C + 28
    assert note.interval == "two octaves and a major third higher"


def test_a_mixture_sounds_the_zone_of_its_key_lowest_first():
    low, high = (Fraction(1), Fraction(4, 3)), (Fraction(4), Fraction(2))
    mixture = a_stop("Mixture", composition=(Zone(0, low), Zone(24, high)))

    assert lengths_of(mixture, 23) == (Fraction(4, 3), Fraction(1))
    assert [note.key for note in notes(mixture, 24)] == [36, 48]


@pytest.mark.parametrize(
    ("compass", "key"), [(Compass(0, 60), MIDDLE_C), (Compass(0, 23), TENOR_C)]
)
def test_a_stop_is_shown_at_a_c_that_it_has(compass, key):
    assert shown_key(compass) == key
