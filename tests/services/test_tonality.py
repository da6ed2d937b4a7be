import pytest

from services.tonality import key_words


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("Eb major", "E♭ major"),
        ("E flat", "E♭"),
        ("e-flat minor", "E♭ minor"),
        ("f# minor", "F♯ minor"),
        ("C sharp minor", "C♯ minor"),
        ("Bb", "B♭"),
        ("bbm", "B♭ minor"),
        ("b minor", "B minor"),
        ("Em", "E minor"),
        ("F", "F"),
        ("D dorian", "D dorian"),
        ("A♭ maj", "A♭ major"),
    ],
)
def test_a_key_is_set_with_its_sign(given, shown):
    assert key_words(given) == shown


@pytest.mark.parametrize("given", ["", "Tone VIII", "D, then G", "Es-Dur", "bebop", "H"])
def test_what_is_no_key_is_left_as_it_is(given):
    assert key_words(given) == given
