from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments import pitch

TWELFTH = Fraction(8, 3)
WRITTEN = st.builds(
    lambda whole, over, under: whole + Fraction(over, under),
    st.integers(0, 127),
    st.integers(0, 98),
    st.integers(1, 99),
).filter(lambda length: 0 < length <= 128)


@given(WRITTEN)
def test_a_length_is_read_as_it_was_written(length):
    assert pitch.parse_length(pitch.length_label(length)) == length


@pytest.mark.parametrize(
    ("text", "length"),
    [
        ("8", 8),
        (" 16' ", 16),
        ("4′", 4),
        ("2 2/3", TWELFTH),
        ("2-2/3", TWELFTH),
        ("2⅔", TWELFTH),
        ("2 ⅔’", TWELFTH),
        ("2 2⁄3", TWELFTH),
        ("½", Fraction(1, 2)),
        ("1/2", Fraction(1, 2)),
    ],
)
def test_the_ways_that_people_write_a_length_are_read(text, length):
    assert pitch.parse_length(text) == length


@pytest.mark.parametrize("text", ["", "'", "eight", "8-", "2 2/0", "1/00", "8 4", "-8", "٨", "2⅔⅔"])
def test_what_is_no_length_is_told_so(text):
    with pytest.raises(pitch.LengthError, match="Write feet like 8, 4 or 2 2/3"):
        pitch.parse_length(text)


@pytest.mark.parametrize("text", ["0", "129", "128 1/2"])
def test_no_pipe_is_nothing_long_or_longer_than_a_street(text):
    with pytest.raises(pitch.LengthError, match="an organ pipe can have"):
        pitch.parse_length(text)


@pytest.mark.parametrize(
    ("length", "typeset"),
    [
        (Fraction(8), "8′"),
        (TWELFTH, "2⅔′"),
        (Fraction(1, 2), "½′"),
        (Fraction(8, 13), "⁸⁄₁₃′"),
        (Fraction(16, 11), "1⁵⁄₁₁′"),
    ],
)
def test_a_length_for_eyes_has_a_real_fraction(length, typeset):
    assert pitch.length_typeset(length) == typeset


def test_an_octave_is_told_from_a_mutation():
    octaves = [one for one in (32, 16, 8, 4, 2, 1) if pitch.is_octave(Fraction(one))]

    assert octaves == [32, 16, 8, 4, 2, 1]
    assert not pitch.is_octave(TWELFTH)
    assert not pitch.is_octave(Fraction(16, 3))


def test_on_a_pedal_of_sixteen_the_fifteenth_of_the_manual_is_a_twenty_second():
    assert pitch.harmonic(Fraction(2), unison=Fraction(16)) == 8


@pytest.mark.parametrize("number", range(1, 37))
def test_a_count_and_its_length_are_inverses(number):
    try:
        length = pitch.length_of_ordinal(number)
    except pitch.LengthError:
        assert (number - 1) % 7 in {3, 5}
    else:
        assert pitch.ordinal(length) == number


@pytest.mark.parametrize("number", [0, -6, 4, 11])
def test_no_rank_is_counted_so(number):
    with pytest.raises(pitch.LengthError, match=f"No rank is counted {number} "):
        pitch.length_of_ordinal(number)


@pytest.mark.parametrize("length", [16, Fraction(32, 3), Fraction(8, 11), Fraction(8, 17)])
def test_below_the_unison_and_off_the_scale_there_is_no_count(length):
    assert pitch.ordinal(Fraction(length)) is None


@pytest.mark.parametrize(
    ("length", "name"),
    [
        (Fraction(8), "at the note played"),
        (Fraction(4), "an octave higher"),
        (TWELFTH, "an octave and a fifth higher"),
        (Fraction(8, 5), "two octaves and a major third higher"),
        (Fraction(16, 3), "a fifth higher"),
        (Fraction(16), "an octave lower"),
        (Fraction(32, 3), "a fourth lower"),
        (Fraction(8, 23), "four octaves and the ratio 23/16 higher"),
        (Fraction(1, 8), "6 octaves higher"),
    ],
)
def test_what_is_heard_is_named(length, name):
    assert pitch.interval_name(length) == name


@given(WRITTEN)
def test_the_nearest_key_is_within_half_a_semitone(length):
    assert abs(pitch.deviation(length)) <= 50.000001


def test_a_pipe_halves_with_the_octave():
    top = pitch.speaking_length(Fraction(2), 60)

    assert top == pytest.approx(1 / 16)
    assert pitch.speaking_length(Fraction(2), 0) == 2


def test_a_rounded_label_stands_near_the_length_it_means():
    errors = [abs(label / length - 1) for label, length in pitch.ROUNDED_LABELS.items()]

    assert max(errors) <= Fraction(1, 8)
    assert not any(pitch.is_octave(length) for length in pitch.ROUNDED_LABELS.values())


@pytest.mark.parametrize(("feet", "share"), [(32, 100), (16, 88), (8, 76), (4, 64), (2, 52)])
def test_an_octave_up_shortens_the_line_that_stands_for_a_length(feet, share):
    assert pitch.rank_line(Fraction(feet)) == share


def test_the_line_of_the_smallest_pipe_can_still_be_seen():
    assert pitch.rank_line(Fraction(1, 16)) == 4
