import pytest

from registrations.checks.findings import Level
from registrations.checks.sequences import change_does_nothing
from registrations.combination import Music, Texture
from tests.builders import an_organ
from tests.registrations.sequences.helpers import a_change, findings

ORGAN = an_organ()
BEFORE = a_change("great/trumpet-8", right="great")


@pytest.mark.parametrize(
    "change",
    [
        a_change("great/trumpet-8", "great/principal-4", right="great"),
        a_change("great/trumpet-8", right="swell"),
        a_change("great/trumpet-8", right="great", note="Swell box open."),
        a_change("great/trumpet-8", right="great", music=Music(texture=Texture.SOLO)),
    ],
)
def test_a_change_in_anything_is_quiet(change):
    assert findings(change_does_nothing, ORGAN, change, BEFORE) == []


def test_what_is_set_before_the_music_begins_is_quiet():
    assert findings(change_does_nothing, ORGAN, BEFORE) == []


def test_the_same_again_is_worth_a_thought():
    change = a_change("great/trumpet-8", right="great", cue="Verse 2")
    (finding,) = findings(change_does_nothing, ORGAN, change, BEFORE)

    assert finding.level is Level.ADVICE
    assert finding.message == (
        "The change before has set all this already (Verse 1). "
        "If it is meant to go on so, all is well."
    )
