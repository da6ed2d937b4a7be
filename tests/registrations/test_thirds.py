from instruments.compass import Compass
from registrations.checks.scene import Scene
from registrations.checks.thirds import third_ranks_at, thirds_at
from tests.builders import a_combination, a_stop, an_organ

ORGAN = an_organ(
    great=["Flute 8", "Mixture 15.17.22", a_stop("Tierce 1 3/5", compass=Compass(24, 60))]
)
(GREAT,) = ORGAN.keyboards


def scene(*drawn):
    return Scene(ORGAN, a_combination(*(f"great/{name}" for name in drawn)))


def test_octaves_sound_no_third():
    assert thirds_at(scene("flute-8"), GREAT, 24) == frozenset()
    assert third_ranks_at(scene("flute-8"), GREAT, 24) == ()


def test_a_tierce_sounds_one_where_it_has_pipes():
    given = scene("flute-8", "tierce-1-3-5")

    assert thirds_at(given, GREAT, 23) == frozenset()
    assert thirds_at(given, GREAT, 24) == {"great/tierce-1-3-5"}


def test_of_a_mixture_one_rank_sounds_it():
    (rank,) = third_ranks_at(scene("flute-8", "mixture-15-17-22"), GREAT, 24)

    assert rank.row == "great/mixture-15-17-22#2"
