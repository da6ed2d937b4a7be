import pytest

from registrations.cards.draw import load_fonts
from registrations.cards.fonts import MISSING, Face, Fonts, clean


def plain_fonts() -> Fonts:
    """Every letter half as wide as the type is high: at 72 / 25.4 points, half a mm."""
    letters = {ord(one): 500.0 for one in "abcdefghijklmnopqrstuvwxyz IV□"}
    return Fonts(dict.fromkeys(Face, letters) | {Face.ACCIDENTALS: {ord("♭"): 300.0}})


SIZE = 72 / 25.4


def wrapped(text: str, width: float) -> tuple[str, ...]:
    return plain_fonts().wrap(text, Face.REGULAR, SIZE, width)


def test_plain_text_is_one_run():
    assert plain_fonts().runs("abc", Face.BOLD) == ((Face.BOLD, "abc"),)


def test_an_accidental_changes_the_face_and_back():
    assert plain_fonts().runs("e♭ a", Face.BOLD) == (
        (Face.BOLD, "e"),
        (Face.ACCIDENTALS, "♭"),
        (Face.BOLD, " a"),
    )


def test_a_character_that_no_face_has_is_shown_as_missing():
    assert plain_fonts().runs("a中b", Face.BOLD) == ((Face.BOLD, f"a{MISSING}b"),)


def test_width_is_in_mm_over_all_faces():
    assert plain_fonts().width("ab♭", Face.REGULAR, SIZE) == pytest.approx(1.3)


def test_what_fits_is_one_line():
    assert wrapped("open wood", 5) == ("open wood",)


def test_nothing_is_no_line():
    assert wrapped("", 5) == ()


def test_a_long_text_breaks_between_words():
    assert wrapped("stopped diapason bass", 8) == ("stopped diapason", "bass")


def test_a_word_that_is_too_wide_breaks_where_it_must_and_loses_nothing():
    lines = wrapped("a gemshornregal", 3)

    assert lines == ("a", "gemsho", "rnrega", "l")


def test_a_last_line_of_a_numeral_gets_the_word_before_it():
    assert wrapped("open diapason II", 7) == ("open", "diapason II")


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [("diapason II", 4, ("diapason", "II")), ("a diapason II", 5, ("a diapason", "II"))],
)
def test_a_numeral_stays_alone_where_its_word_cannot_come(text, width, lines):
    assert wrapped(text, width) == lines


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("Voix ce\u0301leste", "Voix céleste"),
        (" two\n lines\t", "two lines"),
        ("soft\u00adhyphen\ufeff", "softhyphen"),
        ("B𝄫 and F𝄪", "B♭♭ and F♯♯"),
        ("a\ud800b", "ab"),
    ],
)
def test_text_is_made_one_clean_line(given, shown):
    assert clean(given) == shown


@pytest.mark.parametrize("face", [Face.REGULAR, Face.SEMIBOLD, Face.BOLD])
def test_the_real_faces_have_every_sign_of_a_card(face):
    signs = "àçéèêëïîöøßñåŁ½⅓⅔¼¾⅕⅖⅗⅘⅙⅐⅛⅜⅝⅞⅑⅒⁰¹⁄₀₉′+−·“”’□♭♮♯"

    shown = "".join(text for _, text in load_fonts().runs(signs, face))
    assert shown == signs


def test_figures_are_equally_wide():
    fonts = load_fonts()

    assert len({fonts.width(one, Face.SEMIBOLD, 18) for one in "0123456789"}) == 1
