from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene
from tests.builders import a_combination, an_organ

ORGAN = an_organ()


def judged(*drawn, **hands):
    return [one.id for one in judged_keyboards(Scene(ORGAN, a_combination(*drawn, **hands)))]


def test_without_hands_all_that_sounds_is_judged():
    assert judged("great/open-diapason-8", "swell/oboe-8") == ["great", "swell"]


def test_a_division_that_lends_all_it_has_is_not():
    assert judged("great/open-diapason-8", "swell/oboe-8", "swell-to-great") == ["great"]


def test_a_keyboard_that_also_borrows_is():
    drawn = ("great/open-diapason-8", "great-to-pedal", "swell/oboe-8", "swell-to-great")

    assert judged(*drawn) == ["great", "pedal"]


def test_where_a_hand_is_put_is_judged_always():
    assert judged("swell/oboe-8", "swell-to-great", right="swell") == ["swell"]
