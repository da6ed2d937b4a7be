import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import tremulant_without_sound
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Flute 8 (flute)"],
    swell=["Oboe 8 (reed narrow-conical)"],
    echo=["Vox Humana 8 (reed short)"],
    floating=["echo"],
    couplers=["Swell to Great", "Echo to Great", "Swell Unison Off"],
    tremulants=["great", "swell", "echo"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        ["flute-8", "great/tremulant"],
        ["flute-8", "swell/oboe-8", "swell/tremulant"],
        ["swell/oboe-8", "swell-to-great", "swell-unison-off", "swell/tremulant"],
        ["echo/vox-humana-8", "echo-to-great", "echo/tremulant"],
        ["flute-8"],
        [],
    ],
)
def test_a_tremulant_with_something_to_shake_is_quiet(drawn):
    assert findings(tremulant_without_sound, ORGAN, *drawn) == []


def test_tremulants_alone_are_another_fault():
    assert findings(tremulant_without_sound, ORGAN, "swell/tremulant", "swell-to-great") == []


def test_a_keyboard_that_nobody_plays_still_sounds():
    drawn = ["flute-8", "swell/oboe-8", "swell/tremulant"]

    assert findings(tremulant_without_sound, ORGAN, *drawn, right="great") == []


def test_the_tremulant_of_an_empty_division_is_found():
    (finding,) = findings(tremulant_without_sound, ORGAN, "flute-8", "swell/tremulant")

    assert finding.level is Level.ADVICE
    assert finding.evidence.tremulants == ("swell/tremulant",)
    assert finding.evidence.keyboards == ("swell",)
    assert finding.message == (
        "The tremulant of the Swell is drawn, and nothing of the Swell sounds."
    )


def test_a_floating_division_that_no_coupler_brings_is_silent():
    (finding,) = findings(
        tremulant_without_sound, ORGAN, "flute-8", "echo/vox-humana-8", "echo/tremulant"
    )

    assert finding.evidence.keyboards == ()


def test_a_division_that_unison_off_silences_has_nothing_to_shake():
    drawn = ["flute-8", "swell/oboe-8", "swell-unison-off", "swell/tremulant"]

    assert len(findings(tremulant_without_sound, ORGAN, *drawn)) == 1
