import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import octave_runs_out
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

COUPLERS = ["Swell to Swell 4", "Swell to Swell 16", "Swell to Great", "Swell to Pedal 4"]


def an_organ_with(stop, **given):
    return an_organ(
        great=["Principal 8"],
        swell=[stop],
        pedal=["Bourdon 16"],
        couplers=[*COUPLERS, "Swell Unison Off"],
        **given,
    )


ORGAN = an_organ_with("Oboe 8")


@pytest.mark.parametrize(
    "drawn",
    [
        ["swell/oboe-8"],
        ["swell/oboe-8", "swell-to-great"],
        ["swell/oboe-8", "swell-unison-off"],
        ["swell-to-swell-4"],
    ],
)
def test_without_an_octave_coupler_that_carries_it_is_quiet(drawn):
    assert findings(octave_runs_out, ORGAN, *drawn) == []


def test_an_extended_chest_has_pipes_for_the_octave():
    organ = an_organ_with(a_stop("Oboe 8", compass=Compass(-12, 72)))
    drawn = ["swell/oboe-8", "swell-to-swell-4", "swell-to-swell-16"]

    assert findings(octave_runs_out, organ, *drawn) == []


def test_pedals_never_come_to_the_end_of_a_manual():
    drawn = ["swell/oboe-8", "swell-to-pedal-4"]

    assert findings(octave_runs_out, ORGAN, *drawn, feet="pedal") == []


def test_a_stop_that_begins_higher_has_no_end_at_the_bottom():
    organ = an_organ_with(a_stop("Cornet 8", compass=Compass(24, 60)))

    assert findings(octave_runs_out, organ, "swell/cornet-8", "swell-to-swell-16") == []


def test_a_short_stop_is_no_end_of_the_chest():
    organ = an_organ_with(a_stop("Basson 8", compass=Compass(0, 23)))

    assert findings(octave_runs_out, organ, "swell/basson-8", "swell-to-swell-4") == []


def test_the_top_octave_of_sixty_one_keys_gets_no_octave():
    drawn = ["principal-8", "swell/oboe-8", "swell-to-swell-4"]
    (finding,) = findings(octave_runs_out, ORGAN, *drawn)

    assert finding.level is Level.ADVICE
    assert finding.evidence.keys == (49, 60)
    assert finding.evidence.couplers == ("swell-to-swell-4",)
    assert finding.message == (
        "On the Swell, from c♯3 to c4, Swell to Swell 4 finds no pipes: they end with the keyboard."
    )


def test_the_bottom_octave_gets_no_suboctave():
    (finding,) = findings(octave_runs_out, ORGAN, "swell/oboe-8", "swell-to-swell-16")

    assert finding.evidence.keys == (0, 11)


def test_half_an_octave_more_leaves_half_an_octave_without():
    organ = an_organ_with(a_stop("Oboe 8", compass=Compass(0, 66)))
    (finding,) = findings(octave_runs_out, organ, "swell/oboe-8", "swell-to-swell-4")

    assert finding.evidence.keys == (55, 60)
