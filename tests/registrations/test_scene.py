from instruments.organ import KeyboardKind
from registrations.checks.scene import Scene
from registrations.combination import Music, Player, Texture
from registrations.ranks import ranks_of
from tests.builders import a_combination, an_organ

ORGAN = an_organ()


def ids(keyboards):
    return [one.id for one in keyboards]


def test_no_hands_means_that_every_sounding_keyboard_is_played():
    scene = Scene(ORGAN, a_combination("great/principal-4", "great-to-pedal"))

    assert ids(scene.played) == ["great", "pedal"]


def test_hands_say_what_is_played_though_it_is_silent():
    scene = Scene(ORGAN, a_combination("great/principal-4", right="swell"))

    assert ids(scene.played) == ["swell"]


def test_the_pedals_are_played_where_the_feet_are():
    scene = Scene(ORGAN, a_combination("great/principal-4", right="great", feet="pedal"))

    assert ids(scene.pedals_played) == ["pedal"]


def test_with_hands_and_no_feet_the_pedals_rest():
    scene = Scene(ORGAN, a_combination("pedal/bourdon-16", right="great"))

    assert scene.pedals_played == ()


def test_with_nothing_said_sounding_pedals_are_played():
    (pedals,) = Scene(ORGAN, a_combination("pedal/bourdon-16")).pedals_played

    assert pedals.kind is KeyboardKind.PEDAL


def test_only_music_with_a_solo_has_a_soloist():
    assert Scene(ORGAN, a_combination()).soloist is None
    assert Scene(ORGAN, a_combination(), Music(texture=Texture.SOLO)).soloist is Player.RIGHT


def test_a_scene_takes_over_what_sounds_as_before_and_works_out_the_rest():
    before = Scene(ORGAN, a_combination("great/principal-4", "swell/flute-4"))
    combination = a_combination("great/principal-4", "swell/flute-4", "swell/oboe-8")
    after = Scene(ORGAN, combination, before=before)
    great, swell, _ = ORGAN.keyboards

    assert after.spans_on(great) is before.spans_on(great)
    assert after.spans_on(swell) == Scene(ORGAN, combination).spans_on(swell)


def test_the_ranks_of_a_keyboard_are_those_of_what_is_reached():
    scene = Scene(ORGAN, a_combination("great/principal-4", "great/mixture-19-22-26"))
    (great, *_) = ORGAN.keyboards

    assert scene.ranks_on(great) == tuple(ranks_of(scene.reached_on("great"), scene.tuned))
    assert len(scene.ranks_on(great)) == 4


def test_the_ranks_of_a_keyboard_that_sounds_as_before_are_not_worked_out_again():
    scene = Scene(ORGAN, a_combination("great/principal-4"))
    trial = Scene(ORGAN, a_combination("great/principal-4", "swell/oboe-8"), before=scene)
    great, swell, _ = ORGAN.keyboards

    assert trial.ranks_on(great) is scene.ranks_on(great)
    assert trial.ranks_on(swell) != scene.ranks_on(swell)
    assert trial.tuned is scene.tuned


def test_a_stop_has_its_own_row_of_pipes_unless_it_is_borrowed():
    scene = Scene(ORGAN, a_combination())

    assert scene.ranks["great/principal-4"] == "great/principal-4"


def test_a_stop_that_is_reached_as_before_keeps_its_ranks():
    scene = Scene(ORGAN, a_combination("great/principal-4"))
    trial = Scene(ORGAN, a_combination("great/principal-4", "great/trumpet-8"), before=scene)
    great = ORGAN.keyboards[0]

    (known,) = scene.ranks_on(great)
    assert known in trial.ranks_on(great)
    assert len(trial.ranks_on(great)) == 2
