import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.compass import (
    HIGHEST,
    LOWEST,
    MIDDLE_C,
    TENOR_C,
    Compass,
    CompassError,
    compass_name,
    compass_of_size,
    key_name,
    key_typeset,
    parse_compass,
    parse_key,
)

KEYS = st.integers(LOWEST, HIGHEST)


@st.composite
def compasses(draw):
    # CC is the English name of bottom C in a compass, so no compass begins an octave below it.
    low = draw(st.integers(LOWEST + 1, HIGHEST - 2))
    high = draw(st.integers(low + 2, HIGHEST))
    missing = draw(st.frozensets(st.integers(low + 1, high - 1), max_size=5))
    return Compass(low, high, missing)


@given(KEYS)
def test_a_key_is_read_by_its_name(key):
    assert parse_key(key_name(key)) == key


@given(st.text(max_size=4))
def test_whatever_is_read_as_a_key_has_a_name_that_reads_the_same(text):
    try:
        key = parse_key(text)
    except CompassError:
        return

    assert parse_key(key_name(key)) == key


@given(compasses())
def test_a_compass_is_read_as_it_was_written(compass):
    assert parse_compass(compass_name(compass)) == compass


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("C", 0),
        ("c", TENOR_C),
        ("c1", MIDDLE_C),
        ("GG", -5),
        ("f#1", 30),
        ("e♭2", 39),
        ("Bb", 10),
        ("bb", 22),
        ("BB", -1),
        ("BBb", -2),
        ("cb1", 23),
        ("G♯", 8),
    ],
)
def test_keys_are_named_as_organists_do(text, key):
    assert parse_key(text) == key


@pytest.mark.parametrize("text", ["", "h", "C1", "CD", "c7", "cc", "middle C"])
def test_what_is_no_key_is_told_so(text):
    with pytest.raises(CompassError, match="is not a key"):
        parse_key(text)


@pytest.mark.parametrize("text", ["CCb", "b#6"])
def test_keys_end_somewhere(text):
    with pytest.raises(CompassError, match="They go from CC to b6"):
        parse_key(text)


def test_no_two_keys_share_a_name():
    names = {key_name(key) for key in range(-40, 100)}

    assert len(names) == 140


@pytest.mark.parametrize(("key", "name"), [(30, "f♯1"), (22, "b♭"), (-2, "BB♭"), (-1, "BB")])
def test_a_key_for_eyes_has_a_real_accidental(key, name):
    assert key_typeset(key) == name


@pytest.mark.parametrize(
    ("text", "compass"),
    [
        ("C-g3", Compass(0, 55)),
        (" C – c4 ", Compass(0, 60)),
        ("C to a3", Compass(0, 57)),
        ("CC-a3", Compass(0, 57)),
        ("CCC to f1", Compass(0, 29)),
        ("GG-f3", Compass(-5, 53)),
        ("C,D-c3", Compass(0, 48, frozenset({1}))),
        ("C,D-D", Compass(0, 2, frozenset({1}))),
    ],
)
def test_a_compass_is_read_from_its_two_ends(text, compass):
    assert parse_compass(text) == compass


@pytest.mark.parametrize("text", ["C", "C-c-c1", "g3-C", "C-C", "D,C-c3", "C,C-c3", "C,d4-c3"])
def test_what_is_no_compass_is_told_so(text):
    with pytest.raises(CompassError, match="is not a compass"):
        parse_compass(text)


def test_a_short_octave_has_no_bottom_c_sharp():
    short = parse_compass("C,D-c3")

    assert 0 in short
    assert 1 not in short
    assert short.keys()[:3] == (0, 2, 3)


def test_a_key_beyond_the_ends_is_outside():
    manual = compass_of_size(61)

    assert 60 in manual
    assert 61 not in manual
    assert -1 not in manual


def test_a_missing_key_beyond_the_ends_takes_none_away():
    assert len(Compass(0, 11, frozenset({40}))) == 12
    assert compass_name(Compass(0, 11, frozenset({40}))) == "C-B"
