import dataclasses

import pytest

from instruments.consoles import Console, Piston, PistonKind
from registrations.checks.findings import Level
from registrations.checks.sequences import too_many_moves
from tests.builders import an_organ
from tests.registrations.sequences.helpers import a_change, findings

ORGAN = an_organ(tremulants=["swell"])
STOPS = sorted(stop.id for _, stop in ORGAN.stops())
NOTHING, EIGHT = a_change(), a_change(*STOPS[:8])
NINE = a_change(*STOPS[8:], "swell-to-great", "swell/tremulant")


def with_console(**given):
    return dataclasses.replace(ORGAN, console=Console(**given))


def test_as_many_as_fit_are_quiet():
    assert findings(too_many_moves, ORGAN, EIGHT, NOTHING) == []


def test_before_the_music_begins_there_is_time():
    assert findings(too_many_moves, ORGAN, NINE) == []


def test_what_stays_drawn_is_no_move():
    assert findings(too_many_moves, ORGAN, NINE, NINE) == []


def test_what_the_organ_does_not_have_cannot_be_moved():
    change = a_change(*(f"lost/{number}" for number in range(20)))

    assert findings(too_many_moves, ORGAN, change, NOTHING) == []


@pytest.mark.parametrize(
    "organ",
    [
        with_console(pistons=(Piston("g1", "General 1"),)),
        with_console(sequencer=True),
        dataclasses.replace(ORGAN, accessories=("Eight general pistons",)),
        dataclasses.replace(ORGAN, accessories=("Setzeranlage",)),
    ],
)
def test_a_piston_or_a_sequencer_may_do_it(organ):
    assert findings(too_many_moves, organ, NINE, NOTHING) == []


def test_seventeen_knobs_at_a_cue_are_too_many():
    (finding,) = findings(too_many_moves, ORGAN, NINE, EIGHT)
    evidence = finding.evidence

    assert finding.level is Level.ADVICE
    assert dict(evidence.numbers) == {"moves": 17.0}
    assert evidence.stops == tuple(STOPS)
    assert evidence.couplers == ("swell-to-great",)
    assert evidence.tremulants == ("swell/tremulant",)
    assert finding.message == (
        "17 controls move here (9 to draw, 8 to put in); by hand about 8 fit "
        "while the music goes on."
    )


def test_another_figure_can_be_given():
    assert len(findings(too_many_moves, ORGAN, EIGHT, NOTHING, most_by_hand=7)) == 1


@pytest.mark.parametrize(
    "organ",
    [
        dataclasses.replace(ORGAN, accessories=("Reversible pistons: Great to Pedal", "Bells")),
        with_console(
            pistons=(
                Piston("r", "Great to Pedal", PistonKind.REVERSIBLE, control="great-to-pedal"),
            )
        ),
    ],
)
def test_a_reversible_moves_one_control_and_helps_little(organ):
    assert len(findings(too_many_moves, organ, NINE, NOTHING)) == 1
