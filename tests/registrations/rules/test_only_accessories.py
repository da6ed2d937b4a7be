import pytest

from registrations.checks.findings import Level
from registrations.checks.rules import only_accessories
from tests.builders import an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    couplers=["Swell to Great", "Swell Unison Off"],
    tremulants=["swell"],
)


@pytest.mark.parametrize(
    "drawn",
    [
        [],
        ["principal-8"],
        ["principal-8", "swell-to-great"],
        ["swell/oboe-8", "swell/tremulant"],
    ],
)
def test_a_stop_drawn_or_nothing_at_all_is_quiet(drawn):
    assert findings(only_accessories, ORGAN, *drawn) == []


def test_an_accessory_that_the_organ_has_lost_is_quiet():
    assert findings(only_accessories, ORGAN, "choir-to-great") == []


@pytest.mark.parametrize(
    ("drawn", "couplers", "tremulants"),
    [
        (["swell-to-great"], ("swell-to-great",), ()),
        (["swell-unison-off"], ("swell-unison-off",), ()),
        (["swell/tremulant"], (), ("swell/tremulant",)),
    ],
)
def test_accessories_alone_are_silence(drawn, couplers, tremulants):
    (finding,) = findings(only_accessories, ORGAN, *drawn)

    assert finding.level is Level.FAULT
    assert finding.evidence.couplers == couplers
    assert finding.evidence.tremulants == tremulants


def test_all_that_is_drawn_is_named():
    (finding,) = findings(only_accessories, ORGAN, "swell-to-great", "swell/tremulant")

    assert finding.message == (
        "Only Swell to Great and Tremulant (Swell) are drawn and no stop: nothing will sound."
    )
