import pytest

from registrations.checks.roles import (
    accompanying_keyboards,
    carried,
    divisions_at,
    solo_keyboard,
)
from registrations.checks.scene import Scene
from registrations.combination import Music, Player, Texture
from tests.builders import a_combination, an_organ

ORGAN = an_organ(
    great=["Principal 8"],
    swell=["Oboe 8"],
    pedal=["Bourdon 16"],
    solo=["Tuba 8"],
    floating=["solo"],
    couplers=["Swell to Great", "Solo to Great"],
)


def scene(*drawn, texture=Texture.SOLO, solo=Player.RIGHT, **hands):
    return Scene(ORGAN, a_combination(*drawn, **hands), Music(texture=texture, solo=solo))


@pytest.mark.parametrize(
    "given",
    [
        {"right": "great", "left": "great"},
        {"left": "great"},
        {"right": "choir", "left": "great"},
        {"right": "great", "left": "swell", "texture": Texture.CHORDS},
        {"right": "great", "left": "swell", "texture": Texture.TRIO},
    ],
)
def test_nobody_has_a_solo(given):
    assert solo_keyboard(scene(**given)) is None
    assert accompanying_keyboards(scene(**given)) == ()


@pytest.mark.parametrize(
    ("solo", "found", "others"),
    [
        (Player.RIGHT, "swell", ["great"]),
        (Player.LEFT, "great", ["swell"]),
        (Player.FEET, "pedal", ["great", "swell"]),
    ],
)
def test_the_hand_with_the_tune_has_the_solo_and_other_hands_accompany(solo, found, others):
    given = scene(solo=solo, right="swell", left="great", feet="pedal")

    assert solo_keyboard(given).id == found
    assert [one.id for one in accompanying_keyboards(given)] == others


def test_a_floating_division_is_where_it_sounds():
    great, swell = ORGAN.keyboards[:2]
    given = scene("solo/tuba-8", "solo-to-great")

    assert divisions_at(given, great) == {"great", "solo"}
    assert divisions_at(given, swell) == {"swell"}


def test_what_is_at_home_is_not_carried():
    great = ORGAN.keyboards[0]
    given = scene("great/principal-8", "swell/oboe-8", "swell-to-great")

    found = carried(given, great, frozenset({"great", "swell"}))
    assert [reach.stop.id for reach in found] == ["swell/oboe-8"]
