from fractions import Fraction

from registrations.checks.steps import Step, wide_steps

DOUBLE, UNISON, OCTAVE, TWELFTH, TIERCE = map(Fraction, ("16", "8", "4", "8/3", "8/5"))


def test_octaves_and_less_are_no_wide_steps():
    assert list(wide_steps((DOUBLE, UNISON, OCTAVE, TWELFTH, TIERCE))) == []
    assert list(wide_steps(())) == []


def test_a_twelfth_and_two_octaves_are():
    assert list(wide_steps((UNISON, TWELFTH))) == [Step(TWELFTH, UNISON)]
    assert list(wide_steps((DOUBLE, OCTAVE, TWELFTH))) == [Step(OCTAVE, DOUBLE)]


def test_what_is_missing_are_the_octaves_of_the_lower_pitch():
    assert Step(OCTAVE, DOUBLE).missing == (UNISON,)
    assert Step(TIERCE, UNISON).missing == (OCTAVE, Fraction(2))


def test_what_is_missing_below_an_octave_are_its_own_octaves():
    assert Step(Fraction(1), UNISON).octaves == (OCTAVE, Fraction(2))
    assert Step(Fraction(1), TWELFTH).octaves == (Fraction(2),)


def test_a_step_is_told_in_cents():
    assert Step(TWELFTH, UNISON).cents == 1901.955
