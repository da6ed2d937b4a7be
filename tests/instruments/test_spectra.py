import math

import pytest

from instruments.spectra import MODEL, Tone, partial_powers, tone_of
from instruments.tone import Construction, Family
from tests.builders import a_stop

#: Softest first, as the trade's order has them (common practice, no source).
BY_STRENGTH = (
    "Dulciana 8 (string)",
    "Stopped Diapason 8 (flute stopped)",
    "Harmonic Flute 8 (flute harmonic)",
    "Salicional 8 (string)",
    "Open Diapason 8",
    "Trumpet 8 (reed full-length)",
    "Tuba 8 (reed full-length)",
)


def levels(text: str):
    return tone_of(a_stop(text)).levels


def test_strengths_keep_the_order_of_the_trade():
    strengths = [tone_of(a_stop(text)).strength for text in BY_STRENGTH]

    assert strengths == sorted(set(strengths))


def test_an_open_diapason_is_the_measure_of_strength():
    assert sum(partial_powers(tone_of(a_stop("Open Diapason 8")))) == pytest.approx(1)


def test_strength_is_the_power_of_all_partials_together():
    powers = partial_powers(Tone((0.0, 3.0, 3.0, 2.0), 3.0))

    assert 10 * math.log10(sum(powers)) == pytest.approx(3)
    assert 10 * math.log10(powers[1] / powers[0]) == pytest.approx(3)


def test_a_stopped_pipe_has_mostly_odd_partials():
    first, *rest = levels("Bourdon 8 (flute stopped)")

    assert first == 0
    assert all(odd > even for even, odd in zip(rest[::2], rest[1::2], strict=False))


def test_a_flute_has_fewer_partials_than_a_string_and_a_trumpet_most():
    flute, string, trumpet = map(
        levels, ("Flute 8 (flute)", "Viola 8 (string)", "Trumpet 8 (reed full-length)")
    )

    assert all(a < b < c for a, b, c in zip(flute[1:], string[1:], trumpet[1:], strict=True))


@pytest.mark.parametrize("kind", [one for one in Construction if one is not Construction.OPEN])
def test_every_kind_of_pitched_pipes_has_a_tone(kind):
    pitched = [family for family in Family if family is not Family.PERCUSSION]

    assert all(tone_of(a_stop(family=family, construction=kind)) for family in pitched)


def test_bells_have_none():
    assert tone_of(a_stop("Carillon 4 (percussion)")) is None


def test_a_word_counts_only_as_a_whole():
    assert tone_of(a_stop("Tubasson 8 (reed)")) == tone_of(a_stop("Trumpet 8 (reed)"))


def test_an_organ_can_have_a_tone_of_its_own():
    mine = Tone((0.0, -20.0), -3.0)
    model = MODEL.with_tone((Family.FLUTE, Construction.STOPPED), mine)

    assert tone_of(a_stop("Gedackt 8 (flute stopped)"), model) == mine
    assert tone_of(a_stop("Gedackt 8 (flute stopped)")) != mine
    assert len(model.tones) == len(MODEL.tones)
