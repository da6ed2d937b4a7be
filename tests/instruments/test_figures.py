from fractions import Fraction

import pytest

from instruments.figures import coupler_figure, roman, stop_figure, stop_name
from instruments.organ import Coupler, Half
from tests.builders import a_coupler, a_stop


@pytest.mark.parametrize(
    ("number", "figures"),
    [(1, "I"), (4, "IV"), (5, "V"), (8, "VIII"), (9, "IX"), (14, "XIV"), (46, "XLVI")],
)
def test_ranks_are_counted_in_roman_figures(number, figures):
    assert roman(number) == figures


@pytest.mark.parametrize(
    ("stop", "figure", "name"),
    [
        (a_stop("Principal 8"), "8′", "Principal"),
        (a_stop("Mixture 15.19.22"), "III", "Mixture"),
        (a_stop("Mixture IV", length=None, ranks=4), "IV", "Mixture"),
        (a_stop("Rauschpfeife II", length=Fraction(8, 3), ranks=2), "II 2⅔′", "Rauschpfeife"),
        (a_stop("Vigesima II", length=Fraction(1)), "1′", "Vigesima II"),
        (a_stop("Chimes", length=None), "", "Chimes"),
        (a_stop("Hautbois 8", half=Half.TREBLE), "8′", "Hautbois (treble)"),
        (a_stop("Trumpet Bass 8", half=Half.BASS), "8′", "Trumpet Bass"),
    ],
)
def test_a_stop_is_written_as_its_figure_and_its_name(stop, figure, name):
    assert (stop_figure(stop), stop_name(stop)) == (figure, name)


@pytest.mark.parametrize(
    ("coupler", "figure"),
    [
        (a_coupler("Swell to Great"), ""),
        (a_coupler("Swell to Great 4"), ""),
        (Coupler("octave", "Swell Octave", "swell", "swell", 4), "4′"),
        (a_coupler("Swell Unison Off"), ""),
    ],
)
def test_a_coupler_says_its_octave_where_its_name_does_not(coupler, figure):
    assert coupler_figure(coupler) == figure
