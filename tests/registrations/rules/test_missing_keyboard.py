import pytest

from registrations.checks import run
from registrations.checks.findings import Level
from registrations.checks.rules import missing_keyboard
from registrations.checks.scene import Scene
from registrations.combination import Music, Texture
from tests.builders import a_combination, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ()


@pytest.mark.parametrize(
    "hands",
    [
        {},
        {"right": "great"},
        {"right": "great", "left": "swell", "feet": "pedal"},
        {"feet": "pedal"},
    ],
)
def test_hands_on_manuals_and_feet_on_pedals_are_quiet(hands):
    assert findings(missing_keyboard, ORGAN, "open-diapason-8", **hands) == []


def test_a_keyboard_that_is_silent_is_another_fault():
    assert findings(missing_keyboard, ORGAN, right="swell") == []


@pytest.mark.parametrize(
    ("hands", "said"),
    [
        ({"right": "choir"}, "The right hand is put on “choir”: this organ has no such keyboard."),
        ({"feet": "echo"}, "The feet are put on “echo”: this organ has no such keyboard."),
        ({"left": "pedal"}, "The left hand is put on the Pedal, which is played with the feet."),
        ({"feet": "great"}, "The feet are put on the Great, which is played with the hands."),
    ],
)
def test_a_hand_or_feet_in_the_wrong_place_are_a_fault(hands, said):
    (finding,) = findings(missing_keyboard, ORGAN, "open-diapason-8", **hands)

    assert finding.level is Level.FAULT
    assert finding.evidence.keyboards == tuple(hands.values())
    assert finding.message == said


@pytest.mark.parametrize("texture", Texture)
def test_no_rule_falls_over_a_keyboard_that_is_not_there(texture):
    combination = a_combination(
        "great/open-diapason-8", "swell-to-great", right="choir", left="echo", feet="solo"
    )

    found = run(Scene(ORGAN, combination, Music(texture=texture)))

    assert [one.rule for one in found].count("missing-keyboard") == 3
