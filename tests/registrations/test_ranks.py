from dataclasses import replace
from fractions import Fraction

import pytest

from instruments.compass import parse_key
from instruments.temperament import MEANTONE, frequency
from registrations.ranks import rank_spans, tuning
from tests.builders import a_combination, a_stop, an_organ

C1 = parse_key("c1")
PARISH = an_organ(couplers=["Swell to Great", "Swell to Great 4"])


def ranks_of(organ, *drawn, keyboard="great"):
    return list(rank_spans(organ, a_combination(*drawn), keyboard, tuning(organ)))


def hertz(organ, one, key=C1):
    return tuning(organ).hertz(key + one.step) * one.place


def great(*stops):
    return an_organ(great=stops)


def test_nothing_drawn_has_no_ranks():
    assert ranks_of(PARISH) == []


def test_bells_and_what_has_no_pitch_are_left_out():
    organ = great("Bells 4 (percussion)", a_stop("Zimbelstern (other)"))

    assert ranks_of(organ, *organ.control_ids()) == []


def test_a_rank_of_its_own_is_tuned_pure_to_the_key():
    organ = replace(great("Twelfth 2 2/3"), temperament="quarter-comma meantone")
    (twelfth,) = ranks_of(organ, "great/twelfth-2-2-3")

    assert hertz(organ, twelfth) == pytest.approx(
        frequency(C1, Fraction(8, 3), temperament=MEANTONE)
    )


def unit(*lengths, **given):
    return great(*(a_stop(f"Unit {one} (flute)", rank="unit", **given) for one in lengths))


def test_a_mutation_from_a_unit_rank_has_the_pitch_of_the_tempered_key():
    organ = unit("8", "2 2/3")
    (quint,) = ranks_of(organ, "great/unit-2-2-3")

    assert hertz(organ, quint) == pytest.approx(frequency(C1 + 19))
    assert quint.length == Fraction(8, 3)


def test_a_unit_that_only_mutations_use_is_tuned_pure():
    organ = unit("2 2/3", "1 1/3")

    assert [hertz(organ, one) for one in ranks_of(organ, *organ.control_ids())] == pytest.approx(
        [frequency(C1, Fraction(8, 3)), frequency(C1, Fraction(4, 3))]
    )


def test_a_borrowed_mutation_is_tuned_as_its_lender():
    lender = a_stop("Flute 8 (flute)", id="lender")
    borrower = a_stop("Nazard 2 2/3 (string)", borrowed_from="great/lender")
    organ = great(borrower, lender)
    (nazard,) = ranks_of(organ, "great/nazard-2-2-3")

    assert hertz(organ, nazard) == pytest.approx(frequency(C1 + 19))
    assert nazard.tone == tuning(organ).tones["great/lender"]


def test_the_ranks_of_a_mixture_are_pure_and_told_one_by_one():
    organ = great("Mixture 15.19.22")
    found = ranks_of(organ, "great/mixture-15-19-22")

    assert [one.length for one in found] == [2, Fraction(4, 3), 1]
    assert [hertz(organ, one) / frequency(C1) for one in found] == pytest.approx([4, 6, 8])


def test_a_rank_is_told_anew_where_its_mixture_breaks():
    treble = a_stop("Mixture 15.19").composition[0]
    broken = replace(a_stop("Mixture 19.22"), composition=(a_stop("M 19.22").composition[0],))
    broken = replace(
        broken, composition=(*broken.composition, replace(treble, start=C1)), id="mixture"
    )
    found = ranks_of(great(broken), "great/mixture")

    assert [(one.low, one.high, one.length) for one in found] == [
        (0, 23, Fraction(4, 3)),
        (0, 23, 1),
        (24, 60, 2),
        (24, 60, Fraction(4, 3)),
    ]


def test_a_coupled_rank_is_heard_where_the_coupler_takes_it():
    found = ranks_of(PARISH, "swell/oboe-8", "swell-to-great-4")

    assert [(one.length, one.low, one.high) for one in found] == [(4, 0, 48)]
    assert hertz(PARISH, found[0]) == pytest.approx(frequency(C1 + 12))


def test_a_celeste_is_tuned_a_little_sharp_and_its_partner_is_not():
    organ = an_organ(
        swell=[
            "Salicional 8 (string)",
            replace(a_stop("Celeste 8 (string undulating)"), ranks=2),
        ]
    )
    salicional, partner, sharp = ranks_of(organ, *organ.control_ids(), keyboard="swell")

    assert hertz(organ, partner) == hertz(organ, salicional)
    assert 1 < hertz(organ, sharp) - hertz(organ, partner) < 2


def test_a_celeste_of_one_rank_is_the_sharp_one():
    (celeste,) = ranks_of(PARISH, "swell/celeste-8", keyboard="swell")

    assert hertz(PARISH, celeste) > frequency(C1)


@pytest.mark.parametrize("name", ["equal", "as grandfather left it"])
def test_a_temperament_that_nobody_knows_is_taken_as_equal(name):
    assert tuning(replace(PARISH, temperament=name)).octave == tuning(PARISH).octave


def test_the_pitch_is_the_organs():
    assert tuning(replace(PARISH, pitch_hz=466)).hertz(parse_key("a1")) == pytest.approx(466)
