import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.spelling import fold, name_words, split_name


@pytest.mark.parametrize(
    ("one", "other"),
    [("Dulciana", "Dulzian"), ("Violon", "Violone"), ("Horn", "Hohn"), ("Quint", "Quintade"),
     ("XXVI", "XXXVI"), ("Vox humana", "Voce umana"), ("Flauto", "Flöte"), ("Subbas", "Subba")],
)  # fmt: skip
def test_different_names_stay_different(one, other):
    assert fold(one) != fold(other)


@pytest.mark.parametrize(
    "spellings",
    [
        ("Rohrflöte", "Rohrfloete", "ROHRFLOTE", "Rohr-Flöte"),
        ("Rørfløjte", "Rörflöjte", "Roerfloejte"),
        ("Gedackt", "Gedact", "Gedeckt", "Gedekt", "Gedakt"),
        ("Subbaß", "Subbass", "Sub Bass"),
        ("Holpijp", "Holpyp", "HOLPIJP"),
        ("Octave", "Oktave", "Octaves"),
        ("Prinzipal", "Principal"),
        ("Viole d’orchestre", "Viole d'Orchestre"),
        ("Qvinta", "Quinta"),
        ("Zymbel", "Cimbel", "Cymbel"),
    ],
)
def test_spellings_of_one_name_meet(spellings):
    assert len({fold(spelling) for spelling in spellings}) == 1


@given(st.text())
def test_what_is_folded_has_no_spaces_or_capitals(text):
    folded = fold(text)

    assert not any(letter.isspace() for letter in folded)
    assert folded == folded.casefold()


def test_the_words_of_a_name_keep_its_numbers():
    assert split_name("Flöte 4' (No. 2)") == ["flote", "4", "no", "2"]


def test_the_words_to_look_up_are_without_numbers_and_written_out():
    assert name_words("Op. Diap. No. II 8'") == ["open", "diapason", "no"]
