import pytest

from instruments.compass import Compass
from registrations.checks.findings import Level
from registrations.checks.rules import harsh_in_minor
from registrations.checks.rules.harsh_in_minor import minor_keynote
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

CHORUS = ["principal-8", "octave-4", "fifteenth-2"]
ORGAN = an_organ(
    great=[
        "Principal 8",
        "Octave 4",
        "Fifteenth 2",
        "Tierce 1 3/5",
        "Mixture 19.22.26",
        "Sesquialtera 12.17",
        "Trumpet 8 (reed full-length)",
        "Clarion 4 (reed full-length)",
        "Flute Tierce 1 3/5 (flute)",
        a_stop("High Tierce 1 3/5", compass=Compass(48, 60)),
    ]
)
MINOR = Music(key="C minor")


def found(*drawn, music=MINOR):
    return findings(harsh_in_minor, ORGAN, *drawn, music=music)


@pytest.mark.parametrize("third", ["mixture-19-22-26", "high-tierce-1-3-5"])
def test_without_a_third_over_the_chord_it_is_quiet(third):
    assert found(*CHORUS, third) == []


@pytest.mark.parametrize("key", ["C major", "", "no key at all"])
def test_in_major_and_where_no_key_is_known_it_is_quiet(key):
    assert found(*CHORUS, "tierce-1-3-5", music=Music(key=key)) == []


@pytest.mark.parametrize("texture", [Texture.SOLO, Texture.TRIO])
def test_a_tune_has_no_chord_to_contradict(texture):
    music = Music(key="C minor", texture=texture)

    assert found(*CHORUS, "tierce-1-3-5", music=music) == []


def test_beside_trumpets_a_tierce_is_lost():
    assert found("trumpet-8", "clarion-4", "flute-tierce-1-3-5") == []


def test_a_third_alone_is_another_fault():
    assert found("tierce-1-3-5") == []


def test_a_tierce_over_a_chorus_in_minor_is_found():
    (finding,) = found(*CHORUS, "tierce-1-3-5")

    assert finding.level is Level.ADVICE
    assert finding.evidence.keyboards == ("great",)
    assert finding.evidence.stops == ("great/tierce-1-3-5",)
    assert finding.evidence.keys == (24, 31)
    assert finding.evidence.numbers == (("roughness_ratio", 1.6),)
    assert finding.message == (
        "On the Great, Tierce 1⅗′ sounds a major third over the minor chord: "
        "it is 1.6 times as rough as without."
    )


def test_a_sesquialtera_is_worse():
    (finding,) = found(*CHORUS, "sesquialtera-12-17")

    assert finding.level is Level.WARNING


def test_two_ranks_are_weighed_together():
    (finding,) = found(*CHORUS, "sesquialtera-12-17", "tierce-1-3-5")

    assert finding.evidence.stops == ("great/tierce-1-3-5", "great/sesquialtera-12-17")
    assert "sound a major third" in finding.message


@pytest.mark.parametrize(
    ("key", "keynote"),
    [
        ("G minor", 19),
        ("c minor", 24),
        ("F# minor", 30),
        ("B♭ minor", 22),
        ("e-moll", 28),
        ("E major", None),
        ("aria minor", None),
        ("", None),
    ],
)
def test_the_keynote_of_a_minor_key_lies_in_the_middle(key, keynote):
    assert minor_keynote(key) == keynote
