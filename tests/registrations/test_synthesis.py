"""What is in the sound is read back from its Fourier transform."""

import io
import math
import wave

import numpy as np
import pytest

from registrations.spectrum import Spectrum, spectrum
from registrations.synthesis import (
    DIAPASON_PEAK,
    FADE,
    HIGHEST_PEAK,
    RATE,
    SynthesisError,
    samples,
    wav_bytes,
)
from tests.builders import a_combination, an_organ

ORGAN = an_organ()
SILENCE = Spectrum(261.63, (), ())
#: The dB below the strongest partial to which the transform is searched.
DEPTH = 70


def sounding(*drawn, keys=(24,)):
    return spectrum(ORGAN, a_combination(*drawn), "great", *keys)


def read(content: bytes):
    with wave.open(io.BytesIO(content)) as file:
        shape = (file.getnchannels(), file.getsampwidth(), file.getframerate())
        return shape, np.frombuffer(file.readframes(file.getnframes()), "<i2") / 32767


def partials(heard):
    """Give the frequencies and levels (dB) of the peaks of a sound, its fades cut off."""
    steady = heard[round(FADE * RATE) : -round(FADE * RATE)]
    turn = 2 * math.pi * np.arange(steady.size) / steady.size
    window = sum(
        share * np.cos(number * turn)
        for number, share in enumerate((0.35875, -0.48829, 0.14128, -0.01168))
    )
    level = 20 * np.log10(np.abs(np.fft.rfft(steady * window)) / window.sum() * 2 + 1e-12)
    inner = level[1:-1]
    found = (inner > level[:-2]) & (inner > level[2:]) & (inner > level.max() - DEPTH)
    places = np.flatnonzero(found) + 1
    return places * RATE / steady.size, level[places]


def expected(sound):
    floor = max(sound.powers) * 10 ** (-DEPTH / 10)
    kept = [pair for pair in zip(sound.frequencies, sound.powers, strict=True) if pair[1] > floor]
    return map(np.array, zip(*kept, strict=True))


COMBINATIONS = [
    ("great/open-diapason-8",),
    ("great/open-diapason-8", "great/principal-4", "great/twelfth-2-2-3", "great/fifteenth-2"),
    ("great/trumpet-8", "swell/oboe-8", "swell-to-great-4"),
    ("swell/stopped-diapason-8", "swell/nazard-2-2-3", "swell/tierce-1-3-5", "swell-to-great"),
    ("great/open-diapason-8", "great/mixture-19-22-26"),
]


@pytest.mark.parametrize("drawn", COMBINATIONS)
@pytest.mark.parametrize("keys", [(24,), (12, 28, 43)])
def test_a_wav_holds_exactly_the_partials_that_were_reckoned(drawn, keys):
    sound = sounding(*drawn, keys=keys)
    wanted, _ = expected(sound)
    _, heard = read(wav_bytes(sound, 4))

    found, _ = partials(heard)

    assert found == pytest.approx(wanted, abs=0.5)


@pytest.mark.parametrize("drawn", COMBINATIONS)
def test_a_wav_holds_them_as_strong_as_they_were_reckoned(drawn):
    sound = sounding(*drawn)
    _, powers = expected(sound)
    _, heard = read(wav_bytes(sound, 4))

    _, levels = partials(heard)

    between = levels - 10 * np.log10(powers)
    assert between.max() - between.min() < 1


def test_it_is_one_channel_of_16_bits():
    shape, heard = read(wav_bytes(sounding("great/open-diapason-8"), 0.5))

    assert shape == (1, 2, 44_100)
    assert heard.size == 22_050


def test_silence_is_written_as_zeros():
    _, heard = read(wav_bytes(SILENCE, 0.1))

    assert heard.size == 4410
    assert not heard.any()


def test_one_sine_of_an_open_diapasons_strength_has_its_amplitude():
    assert np.abs(samples(Spectrum(440, (440.0,), (1.0,)), 0.5)).max() == pytest.approx(
        DIAPASON_PEAK, rel=1e-4
    )


def test_a_softer_sound_stays_softer():
    one, two = (samples(Spectrum(440, (440.0,), (power,)), 0.5) for power in (0.25, 1.0))

    assert np.allclose(2 * one, two)


def test_everything_together_is_held_to_the_limit():
    loud = samples(sounding(*ORGAN.control_ids(), keys=(0, 12, 19, 24, 28, 31)), 1)

    assert np.abs(loud).max() <= HIGHEST_PEAK
    assert np.abs(loud).max() == pytest.approx(HIGHEST_PEAK, rel=0.2)


def test_it_comes_and_goes_without_a_click():
    heard = samples(sounding("great/open-diapason-8"), 0.5)
    fade = round(FADE * RATE)

    assert heard[0] == heard[-1] == 0
    assert np.abs(np.diff(heard[: fade // 10])).max() < np.abs(np.diff(heard[fade:-fade])).max() / 4


def test_what_the_rate_cannot_carry_is_left_out():
    high = Spectrum(440, (440.0, 5000.0), (1.0, 1.0))

    assert np.allclose(
        samples(high, 0.5, rate=8000), samples(Spectrum(440, (440.0,), (1.0,)), 0.5, rate=8000)
    )


@pytest.mark.parametrize("seconds", [0, -1, 0.05, 61, math.nan, math.inf])
def test_a_length_that_cannot_be_is_refused_in_words(seconds):
    with pytest.raises(SynthesisError, match="lasts from"):
        samples(SILENCE, seconds)
