import pytest

from instruments.compass import Compass
from instruments.organ import Half
from registrations.checks.findings import Level
from registrations.checks.rules import short_stop_bares_keys
from registrations.combination import Music, Texture
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings

ORGAN = an_organ(
    great=[
        a_stop("Cornet 8", compass=Compass(24, 60)),
        a_stop("Bass 8", half=Half.BASS),
        a_stop("Treble 8", half=Half.TREBLE),
        a_stop("Middle 8", compass=Compass(12, 35)),
    ],
    swell=["Salicional 8", a_stop("Celeste 8", "string undulating", compass=Compass(12, 60))],
    couplers=["Swell to Great"],
)


def found(*drawn, texture=Texture.CHORDS, **hands):
    return findings(short_stop_bares_keys, ORGAN, *drawn, music=Music(texture=texture), **hands)


def test_stops_of_full_compass_are_quiet():
    assert found("swell/salicional-8", "swell/celeste-8") == []


def test_both_halves_of_a_divided_stop_are_quiet():
    assert found("bass-8", "treble-8") == []


def test_a_stop_that_a_coupler_brings_fills_the_bass():
    assert found("cornet-8", "swell/salicional-8", "swell-to-great") == []


def test_a_short_stop_that_is_lent_to_a_full_keyboard_is_quiet():
    drawn = ["bass-8", "treble-8", "swell/celeste-8", "swell-to-great"]

    assert found(*drawn) == []


def test_a_keyboard_that_is_not_played_is_quiet():
    assert found("cornet-8", "swell/salicional-8", right="swell", left="swell") == []


def test_a_keyboard_that_sounds_nothing_at_all_is_another_fault():
    assert found("swell/salicional-8", right="great") == []


def test_a_short_octave_is_no_fault_of_the_stops():
    organ = an_organ(great=["Principal 8"], compass="C,D-c3")

    assert findings(short_stop_bares_keys, organ, "principal-8") == []


def test_a_celeste_alone_bares_the_bass():
    (finding,) = found("swell/celeste-8", right="swell", left="swell")

    assert finding.level is Level.WARNING
    assert finding.evidence.keyboards == ("swell",)
    assert finding.evidence.stops == ("swell/celeste-8",)
    assert finding.evidence.keys == (0, 11)
    assert finding.message == (
        "On the Swell, from C to B, nothing sounds: Celeste 8′ has no pipes there."
    )


@pytest.mark.parametrize(
    ("drawn", "keys"),
    [(["bass-8"], [(24, 60)]), (["middle-8"], [(0, 11), (36, 60)]), (["cornet-8"], [(0, 23)])],
)
def test_each_end_that_is_bare_is_found(drawn, keys):
    assert [one.evidence.keys for one in found(*drawn)] == keys


@pytest.mark.parametrize("texture", [Texture.SOLO, Texture.TRIO])
def test_under_a_tune_it_is_only_worth_a_thought(texture):
    drawn = ["cornet-8", "swell/salicional-8"]
    (finding,) = found(*drawn, texture=texture, right="great", left="swell")

    assert finding.level is Level.ADVICE


def test_under_the_accompaniment_of_a_solo_it_is_a_warning():
    drawn = ["cornet-8", "swell/salicional-8"]
    (finding,) = found(*drawn, texture=Texture.SOLO, right="swell", left="great")

    assert finding.level is Level.WARNING
