import math
from itertools import pairwise

import pytest

from instruments.compass import parse_compass
from registrations.ladder import ladder_of
from registrations.listening import MOST_PARTIALS, Playing, offers, sketch, sound_of
from registrations.spectrum import Spectrum, spectrum
from registrations.synthesis import DIAPASON_PEAK, HIGHEST_PEAK
from tests.builders import a_combination, a_stop, an_organ

DIAPASON = a_combination("great/open-diapason-8", right="great")


def offered(organ, combination):
    return [one.words for one in offers(ladder_of(organ, combination))]


def a_sound(*powers):
    return Spectrum(100.0, tuple(100.0 * (n + 1) for n in range(len(powers))), powers)


def test_nothing_is_offered_where_nothing_sounds():
    assert offered(an_organ(), a_combination()) == []
    assert offered(an_organ(), a_combination(right="great")) == []


def test_silence_has_no_sketch():
    assert sketch(a_sound()) == ()


def test_of_a_manual_a_key_and_a_chord_are_offered_of_pedals_a_key():
    drawn = a_combination("great/open-diapason-8", "pedal/bourdon-16", right="great", feet="pedal")

    words = ["c1 on the Great", "c1, e1, g1 and c2 on the Great", "c1 on the Pedal"]
    assert offered(an_organ(), drawn) == words


def test_a_chord_keeps_to_the_keys_there_are():
    drawn = a_combination("great/principal-8", right="great")
    short, shorter = (an_organ(great=["Principal 8"], compass=f"C-{high}") for high in ("f1", "c1"))

    assert offered(short, drawn)[1] == "c1 and e1 on the Great"
    assert offered(shorter, drawn) == ["c1 on the Great"]


def test_a_stop_of_the_upper_keys_is_heard_on_its_lowest():
    half = a_stop("Cornet 8", compass=parse_compass("c2-c4"))
    drawn = a_combination("great/cornet-8", right="great")

    assert offered(an_organ(great=[half]), drawn)[0] == "c2 on the Great"


@pytest.mark.parametrize("playing", Playing)
def test_what_is_heard_is_the_spectrum_of_the_keys(playing):
    organ = an_organ()
    (offer,) = [one for one in offers(ladder_of(organ, DIAPASON)) if one.playing is playing]

    assert sound_of(organ, DIAPASON, offer) == spectrum(organ, DIAPASON, "great", *offer.keys)


def test_a_soft_sound_keeps_its_proportion_to_an_open_diapason():
    found = sketch(a_sound(0.25, 0.01))

    assert [one.amplitude for one in found] == pytest.approx(
        [DIAPASON_PEAK / 2, DIAPASON_PEAK / 10]
    )
    assert [one.hertz for one in found] == [100.0, 200.0]


def test_a_loud_sound_cannot_exceed_the_limit():
    found = sketch(a_sound(*[4.0] * 20))

    assert math.fsum(one.amplitude for one in found) == pytest.approx(HIGHEST_PEAK)


def test_of_very_many_partials_the_strongest_are_kept():
    found = sketch(a_sound(*(1 + n / 1000 for n in range(MOST_PARTIALS + 60))))

    assert len(found) == MOST_PARTIALS
    assert min(one.hertz for one in found) == 6100.0
    assert all(one.amplitude >= next_one.amplitude for one, next_one in pairwise(found))
