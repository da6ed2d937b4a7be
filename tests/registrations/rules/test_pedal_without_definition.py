from fractions import Fraction

import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import pedal_without_definition
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8", "Octave 4", "Flute 8 (flute)", "Flute 4 (flute)"],
    swell=["Gedackt 8 (flute stopped)", "Trumpet 8 (reed full-length)"],
    pedal=["Contra Bourdon 32 (flute stopped)", "Subbass 16 (flute stopped)", "Bass 8", "Flute 4"],
    couplers=["Great to Pedal"],
)
SUBBASS_ONLY = an_organ(great=["Principal 8", "Octave 4"], pedal=["Subbass 16"])
CHORUS = ("principal-8", "octave-4")


@pytest.mark.parametrize(
    "drawn",
    [
        [*CHORUS, "pedal/subbass-16", "pedal/bass-8"],
        [*CHORUS, "pedal/subbass-16", "pedal/flute-4"],
        [*CHORUS, "pedal/subbass-16", "great-to-pedal"],
        ["principal-8", "flute-4", "pedal/subbass-16"],
        ["flute-8", "flute-4", "pedal/subbass-16"],
        [*CHORUS],
        ["pedal/subbass-16"],
        [],
    ],
)
def test_an_8_in_the_pedals_soft_hands_and_feet_at_rest_are_quiet(drawn):
    assert findings(pedal_without_definition, ORGAN, *drawn) == []


def test_pedals_that_have_nothing_else_are_quiet():
    assert findings(pedal_without_definition, SUBBASS_ONLY, *CHORUS, "pedal/subbass-16") == []


def test_a_chorus_that_the_hands_do_not_play_is_quiet():
    drawn = [*CHORUS, "swell/gedackt-8", "pedal/subbass-16"]

    assert findings(pedal_without_definition, ORGAN, *drawn, right="swell", feet="pedal") == []


def test_16_alone_under_a_chorus_is_worth_a_thought():
    (finding,) = findings(pedal_without_definition, ORGAN, *CHORUS, "pedal/subbass-16")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("pedal",)
    assert finding.evidence.lengths == (Fraction(8), Fraction(16))
    assert finding.message == (
        "On the Pedal, Subbass 16′ has no 8′ above, and the hands play Principal 8′ and Octave 4′."
    )


def test_a_32_adds_no_definition():
    drawn = ["pedal/contra-bourdon-32", "pedal/subbass-16"]
    (finding,) = findings(pedal_without_definition, ORGAN, *CHORUS, *drawn)

    assert "Contra Bourdon 32′ and Subbass 16′ have no 8′ above" in finding.message


def test_a_trumpet_is_as_loud_as_a_chorus():
    drawn = ["swell/trumpet-8", "pedal/subbass-16"]

    assert len(findings(pedal_without_definition, ORGAN, *drawn, right="swell", feet="pedal")) == 1
