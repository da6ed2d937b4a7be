import dataclasses

import pytest

from instruments.organ import Half
from registrations.checks.findings import Level
from registrations.checks.rules import solo_under_accompaniment
from registrations.combination import Music, Player, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=["Open Diapason 8", "Principal 4", a_stop("Treble Trumpet 8", half=Half.TREBLE)],
    choir=["Dulciana 8 (string)", "Flute 8 (flute)", "Flute 4 (flute)", "Clarinet 8 (reed)"],
    pedal=["Bourdon 16 (flute stopped)", "Trumpet 8 (reed full-length)"],
    couplers=["Choir to Great"],
)
GREAT = ["open-diapason-8", "principal-4"]
FLUTES = ["choir/flute-8", "choir/flute-4"]


def found(*drawn, texture=Texture.SOLO, solo=Player.RIGHT, right="choir", left="great", **hands):
    music = Music(texture=texture, solo=solo)
    return findings(
        solo_under_accompaniment, ORGAN, *drawn, music=music, right=right, left=left, **hands
    )


@pytest.mark.parametrize(
    "drawn",
    [
        ["open-diapason-8", "choir/clarinet-8"],
        ["open-diapason-8", *FLUTES, "choir/clarinet-8"],
    ],
)
def test_a_solo_that_carries_is_quiet(drawn):
    assert found(*drawn) == []


def test_a_solo_that_is_a_little_softer_has_its_colour():
    assert found("choir/dulciana-8", "choir/flute-8", "open-diapason-8", left="choir") == []
    assert found("open-diapason-8", "choir/flute-4", "choir/clarinet-8") == []


@pytest.mark.parametrize("texture", [Texture.CHORDS, Texture.TRIO])
def test_without_a_solo_it_is_quiet(texture):
    assert found(*GREAT, "choir/dulciana-8", texture=texture) == []


def test_a_swell_box_can_be_closed_on_the_accompaniment():
    drawn = [*GREAT, *FLUTES]
    great, *others = ORGAN.divisions
    boxed = dataclasses.replace(great, enclosed=True)
    organ = dataclasses.replace(ORGAN, divisions=(boxed, *others))
    music = Music(texture=Texture.SOLO)

    assert (
        findings(solo_under_accompaniment, organ, *drawn, music=music, right="choir", left="great")
        == []
    )
    assert len(found(*drawn)) == 1


def test_solo_stops_under_the_accompanying_hand_are_another_fault():
    drawn = ["open-diapason-8", "choir/clarinet-8", "choir/flute-8", "choir-to-great"]

    assert found(*drawn) == []


@pytest.mark.parametrize("drawn", [GREAT, ["choir/dulciana-8"]])
def test_where_one_of_them_is_silent_is_another_fault(drawn):
    assert found(*drawn) == []


def test_a_tune_below_where_its_stop_begins_is_another_fault():
    drawn = ["treble-trumpet-8", *FLUTES]

    assert found(*drawn, solo=Player.LEFT) == []


def test_a_dulciana_over_diapasons_is_drowned():
    (finding,) = found(*GREAT, "choir/dulciana-8")

    assert finding.level is Level.WARNING
    assert finding.evidence.keyboards == ("choir", "great")
    assert finding.evidence.numbers == (("solo_db", -12.0), ("accompaniment_db", 7.8))
    assert finding.message == (
        "One note of the tune on the Choir is about 20 dB softer than "
        "three of the accompaniment on the Great."
    )


def test_a_tune_in_the_feet_is_drowned_by_each_hand_that_is_louder():
    drawn = [*GREAT, "choir/dulciana-8", "pedal/bourdon-16"]
    (finding,) = found(*drawn, solo=Player.FEET, feet="pedal")

    assert finding.evidence.keyboards == ("pedal", "great")
