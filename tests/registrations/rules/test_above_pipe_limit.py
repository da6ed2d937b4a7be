from fractions import Fraction

import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import above_pipe_limit
from registrations.checks.rules.above_pipe_limit import last_key
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

EXTENDED = Compass(0, 72)
ORGAN = an_organ(
    great=[
        "Principal 8",
        "Fifteenth 2",
        "Tierce 1 3/5 (flute)",
        "Larigot 1 1/3 (flute)",
        "Sifflet 1 (flute)",
        "Twenty-sixth 2/3",
        "Mixture 19.22.26",
        a_stop("Zimbel 1", ranks=3),
        "Drum (percussion)",
    ],
    swell=[
        a_stop("Octave 4", compass=EXTENDED),
        a_stop("Superoctave 2", compass=EXTENDED),
        "Fifteenth 2",
        "Tierce 1 3/5 (flute)",
        "Mixture 22.26.29",
    ],
    couplers=["Swell to Swell 4", "Swell to Great", "Swell to Great 4", "Swell to Great 16"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["fifteenth-2"],
        ["tierce-1-3-5", "larigot-1-1-3", "sifflet-1"],
        ["mixture-19-22-26"],
        ["zimbel-1"],
        ["drum"],
        ["swell/fifteenth-2", "swell-to-swell-4"],
        ["swell/octave-4", "swell-to-swell-4"],
        ["swell/superoctave-2"],
        ["swell/superoctave-2", "swell-to-great-16"],
        ["swell/mixture-22-26-29", "swell-to-swell-4"],
        [],
    ],
)
def test_what_builders_make_or_let_repeat_is_quiet(drawn):
    assert findings(above_pipe_limit, ORGAN, *drawn) == []


def test_a_keyboard_that_nobody_plays_is_quiet():
    assert findings(above_pipe_limit, ORGAN, "twenty-sixth-2-3", right="swell") == []


def test_an_octave_coupler_on_an_extended_2_is_found_with_its_first_key():
    (finding,) = findings(above_pipe_limit, ORGAN, "swell/superoctave-2", "swell-to-swell-4")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keys == (49, 60)
    assert finding.evidence.couplers == ("swell-to-swell-4",)
    assert dict(finding.evidence.numbers) == {"first_key": 49, "keys": 12}
    assert finding.message == (
        "On the Swell, from c♯3 to c4, Superoctave 2′, through Swell to Swell 4, asks for pipes "
        "shorter than ¹⁄₁₆′, which are hardly ever made."
    )


def test_an_octave_coupler_takes_a_tierce_past_the_limit():
    drawn = ["swell/tierce-1-3-5", "swell-to-great-4"]
    (finding,) = findings(above_pipe_limit, ORGAN, *drawn, right="great")

    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.keys == (45, 48)


def test_a_rank_that_passes_it_by_more_than_an_octave_is_found():
    (finding,) = findings(above_pipe_limit, ORGAN, "twenty-sixth-2-3")

    # Common practice, no source; computed from 1/16 ft: of 2/3 the last key that passes is e2.
    assert finding.evidence.keys == (41, 60)
    assert "from f2 to c4, Twenty-sixth ⅔′ asks for pipes" in finding.message


@pytest.mark.parametrize(
    ("feet", "keys"),
    [("2", 61), ("8/5", 57), ("4/3", 53), ("1", 49), ("4/5", 45), ("2/3", 41), ("1/2", 37)],
)
def test_a_rank_keeps_to_the_limit_for_so_many_keys(feet, keys):
    # Computed from 1/16 of a foot, counting bottom C as the first key.
    assert last_key(Fraction(feet)) + 1 == keys
