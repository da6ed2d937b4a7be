from fractions import Fraction

import pytest

from registrations.acceptance import fingerprint, still_open
from registrations.checks.findings import Evidence, Finding, Level
from registrations.registration import Change, Registration
from registrations.review import review
from tests.builders import a_combination, an_organ

GAP = a_combination("great/open-diapason-8", "great/twelfth-2-2-3", right="great")


def a_finding(rule="gap-below-mutation", message="A gap.", level=Level.WARNING, **evidence):
    return Finding(rule, level, message, Evidence(**evidence))


def test_other_words_for_it_leave_a_finding_the_same():
    plain, wordy = a_finding(stops=("a",)), a_finding(message="There is a gap.", stops=("a",))

    assert fingerprint(plain) == fingerprint(wordy)


def test_the_order_of_ids_is_no_evidence():
    one, other = a_finding(stops=("a", "b")), a_finding(stops=("b", "a"))

    assert fingerprint(one) == fingerprint(other)


def test_what_nobody_hears_in_a_number_is_no_evidence():
    one, other = a_finding(numbers=(("dB", 10.01),)), a_finding(numbers=(("dB", 9.99999),))

    assert fingerprint(one) == fingerprint(other)


@pytest.mark.parametrize(
    "other",
    [
        {"rule": "octave-gap"},
        {"stops": ("b",)},
        {"stops": ("a", "b")},
        {"couplers": ("a",)},
        {"keyboards": ("swell",)},
        {"keys": (0, 23)},
        {"lengths": (Fraction(4),)},
        {"numbers": (("dB", 12.0),)},
    ],
)
def test_other_evidence_is_another_finding(other):
    evidence = {
        "stops": ("a",),
        "keyboards": ("great",),
        "keys": (0, 24),
        "numbers": (("dB", 10.0),),
    }

    assert fingerprint(a_finding(**evidence)) != fingerprint(a_finding(**{**evidence, **other}))


def test_a_fingerprint_fits_where_it_is_stored():
    assert len(fingerprint(a_finding())) == 32


def test_it_is_the_same_tomorrow():
    # printf "gap-below-mutation;stops=('a')" | b2sum -l 128
    assert fingerprint(a_finding(stops=("a",))) == "f6b9620894a07bc6ceb94e640654d633"


def test_nothing_is_open_where_nothing_is_found():
    assert still_open(Registration(an_organ()), ()) == ()


def test_an_accepted_finding_is_open_no_more_in_its_own_change_only():
    organ = an_organ()
    (found,) = review(Registration(organ, (Change("Verse 1", GAP),)))
    meant = frozenset(map(fingerprint, found))
    changes = (Change("Verse 1", GAP, accepted=meant), Change("Verse 2", GAP, note="Box shut"))
    registration = Registration(organ, changes)

    assert found
    assert still_open(registration, review(registration)) == found
