import dataclasses

import pytest

from instruments.compass import Compass
from instruments.organ import Coupling
from registrations.checks.findings import Level
from registrations.checks.rules import coupler_adds_nothing
from tests.builders import a_coupler, a_stop, an_organ
from tests.registrations.rules.helpers import findings

MANUALS = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8", "Mixture 15.19.22"],
    choir=["Dulciana 8"],
    couplers=["Great to Choir", "Swell to Great", "Swell to Choir", "Swell to Great 4"],
)
CHAINED = dataclasses.replace(MANUALS, coupling=Coupling.CHAINED)
ALL_THREE = ["great-to-choir", "swell-to-great", "swell-to-choir"]
STOPS = ["principal-8", "swell/oboe-8", "swell/mixture-15-19-22"]


#: The Great's 4 is the Swell's 8 over again, whose pipes go on above the keys.
UNIT = an_organ(
    great=[a_stop("Octave 4", borrowed_from="swell/flute-8", compass=Compass(0, 48)), "Viol 4"],
    swell=["Flute 8"],
    couplers=["Swell to Great", "Swell to Great 4"],
)


@pytest.mark.parametrize(
    ("organ", "drawn"),
    [
        (MANUALS, [*STOPS, "swell-to-great"]),
        (MANUALS, [*STOPS, "swell-to-great", "swell-to-great-4"]),
        (MANUALS, [*STOPS, *ALL_THREE]),
        (CHAINED, [*STOPS, "great-to-choir", "swell-to-great"]),
    ],
)
def test_a_coupler_that_brings_a_pipe_is_quiet(organ, drawn):
    assert findings(coupler_adds_nothing, organ, *drawn) == []


def test_a_coupler_that_carries_nothing_is_another_fault():
    assert findings(coupler_adds_nothing, MANUALS, "principal-8", "swell-to-great") == []


@pytest.mark.parametrize(
    "drawn", [["viol-4", "swell-to-great-4"], ["octave-4", "swell-to-great"], ["swell-to-great-4"]]
)
def test_the_pipes_of_another_stop_or_pitch_are_new(drawn):
    assert findings(coupler_adds_nothing, UNIT, "swell/flute-8", *drawn) == []


def test_a_keyboard_without_a_hand_does_not_count():
    drawn = [*STOPS, *ALL_THREE]

    assert findings(coupler_adds_nothing, CHAINED, *drawn, right="great", left="great") == []


def test_a_way_round_where_the_keys_move_along_is_found():
    (finding,) = findings(coupler_adds_nothing, CHAINED, *STOPS, *ALL_THREE)

    assert finding.level is Level.ADVICE
    assert finding.evidence.couplers == ("swell-to-choir",)
    assert finding.evidence.keyboards == ("choir",)
    assert finding.evidence.stops == ("swell/oboe-8", "swell/mixture-15-19-22")
    assert finding.message == (
        "Swell to Choir adds nothing: all it brings of Oboe 8′ and Mixture "
        "sounds on the Choir without it."
    )


def test_two_controls_for_one_coupler_need_each_other_no_more():
    first, second = map(a_coupler, ["Swell to Great", "Swell to Great 8"])
    organ = dataclasses.replace(MANUALS, couplers=(first, second))
    found = findings(coupler_adds_nothing, organ, "swell/oboe-8", first.id, second.id)

    assert [one.evidence.couplers for one in found] == [(first.id,), (second.id,)]


def test_the_octave_of_a_rank_is_what_its_4_has_opened():
    drawn = ["swell/flute-8", "octave-4", "swell-to-great-4"]
    (finding,) = findings(coupler_adds_nothing, UNIT, *drawn)

    assert finding.evidence.couplers == ("swell-to-great-4",)
    assert finding.evidence.stops == ("swell/flute-8",)
