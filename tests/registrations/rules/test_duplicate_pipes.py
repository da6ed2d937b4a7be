import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import duplicate_pipes
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

LENDER = "choir/stopped-flute-8"
ORGAN = an_organ(
    great=[
        "Principal 8",
        a_stop("Flute 4", "flute stopped", borrowed_from=LENDER),
    ],
    choir=["Stopped Flute 8 (flute stopped)"],
    pedal=[
        a_stop("Subbass 16", "flute stopped", rank="bass"),
        a_stop("Octave Bass 8", "flute stopped", rank="bass"),
        a_stop("Stopped Bass 8", "flute stopped", rank="bass"),
        a_stop("Bass Flute 8", "flute stopped", borrowed_from=LENDER),
        a_stop("Solo Flute 8", "flute stopped", borrowed_from=LENDER),
    ],
    couplers=["Choir to Great", "Choir to Great 4", "Choir to Pedal"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["pedal/subbass-16", "pedal/octave-bass-8"],
        ["great/flute-4", "choir/stopped-flute-8", "choir-to-great"],
        ["great/flute-4", "choir/stopped-flute-8"],
        ["pedal/bass-flute-8", "pedal/octave-bass-8"],
        ["great/principal-8", "choir/stopped-flute-8", "choir-to-great"],
        ["pedal/solo-flute-8"],
        [],
    ],
)
def test_other_pipes_of_one_rank_and_other_ranks_are_quiet(drawn):
    assert findings(duplicate_pipes, ORGAN, *drawn) == []


def test_a_stop_that_is_needed_on_a_keyboard_of_its_own_is_quiet():
    drawn, hands = ["great/flute-4", "choir/stopped-flute-8"], {"right": "great", "left": "choir"}

    assert findings(duplicate_pipes, ORGAN, *drawn, "choir-to-great-4", right="choir") == []
    assert findings(duplicate_pipes, ORGAN, *drawn, "choir-to-great", **hands) == []


def test_a_key_that_one_of_two_stops_adds_is_quiet_where_nobody_plays():
    drawn = ["pedal/bass-flute-8", "pedal/solo-flute-8", "great/principal-8"]

    assert findings(duplicate_pipes, ORGAN, *drawn, right="great") == []


def test_the_later_of_two_stops_of_one_row_adds_nothing():
    (finding,) = findings(
        duplicate_pipes, ORGAN, "pedal/octave-bass-8", "pedal/stopped-bass-8", "pedal/subbass-16"
    )

    assert finding.level is Level.ADVICE
    assert finding.evidence.stops == ("pedal/stopped-bass-8", "pedal/octave-bass-8")
    assert dict(finding.evidence.numbers) == {"keys": 32, "of_keys": 32}
    assert finding.message == (
        "On the Pedal, Stopped Bass 8′ adds nothing: Octave Bass 8′ opens the same pipes."
    )


def test_a_borrowed_stop_adds_nothing_to_a_coupler_that_brings_its_lender():
    drawn = ["pedal/bass-flute-8", "choir/stopped-flute-8", "choir-to-pedal"]
    (finding,) = findings(duplicate_pipes, ORGAN, *drawn)

    assert finding.evidence.stops == ("pedal/bass-flute-8", LENDER)
    assert finding.evidence.couplers == ("choir-to-pedal",)
    assert "Stopped Flute 8′, through Choir to Pedal, opens the same pipes" in finding.message


def test_an_octave_coupler_opens_the_pipes_of_a_borrowed_4_over_most_keys():
    drawn = ["great/flute-4", "choir/stopped-flute-8", "choir-to-great-4"]
    (finding,) = findings(duplicate_pipes, ORGAN, *drawn)

    assert dict(finding.evidence.numbers) == {"keys": 49, "of_keys": 61}
    assert "Flute 4′ adds nothing at 49 of its 61 keys" in finding.message


def test_of_three_that_are_the_same_pipes_two_are_found():
    drawn = ["pedal/bass-flute-8", "pedal/solo-flute-8", "choir/stopped-flute-8", "choir-to-pedal"]
    found = findings(duplicate_pipes, ORGAN, *drawn)

    assert [one.evidence.stops[0] for one in found] == ["pedal/solo-flute-8", "pedal/bass-flute-8"]
    assert "open the same pipes" in found[0].message
