"""Synthesis: partials as samples and as a WAV file.

A sketch of the pitches, not the sound of the organ: steady sine waves, without the speech of the
pipes, the wind or the room.
"""

import io
import math
import wave

import numpy as np

from registrations.spectrum import Floats, Spectrum

RATE = 44_100
#: Against full scale: the amplitude of one sine that is as strong as an Open Diapason, and what no
#: peak goes beyond. Below that combinations keep their proportions, above it they are held down to
#: it. Our choice.
DIAPASON_PEAK = 0.1
HIGHEST_PEAK = 0.5
#: Seconds in which the sound comes and goes, so that it does not click.
FADE = 0.03
#: Partials start apart by this share of a turn, so that their peaks do not meet (golden section).
_APART = (math.sqrt(5) - 1) / 2
_FULL_SCALE = 32767


class SynthesisError(ValueError):
    """What cannot be made into sound; the message is a sentence for the reader."""


def samples(sound: Spectrum, seconds: float, rate: int = RATE) -> Floats:
    """Give the sound as samples from -1 to 1, with a fade at both ends; silence is zeros.

    Each partial is a sine of its exact frequency, with the root of its power for amplitude; those
    that ``rate`` (samples a second) cannot carry are left out.

    Raises:
        SynthesisError: it would be shorter than its fades or longer than a minute.
    """
    if not 2 * FADE <= seconds <= 60:
        raise SynthesisError(f"A sound lasts from {2 * FADE} to 60 seconds, not {seconds:g}.")
    times = np.arange(round(seconds * rate)) / rate
    heard = np.zeros(times.size)
    for number, (hertz, power) in enumerate(zip(sound.frequencies, sound.powers, strict=True)):
        if hertz < rate / 2:
            heard += math.sqrt(power) * np.sin(2 * math.pi * (hertz * times + number * _APART))
    peak = float(np.abs(heard).max())
    gain = min(DIAPASON_PEAK, HIGHEST_PEAK / max(peak, 1.0))
    return gain * heard * _faded(times.size, round(FADE * rate))


def _faded(size: int, fade: int) -> Floats:
    """Give the loudness over time: half a cosine up, level, half a cosine down."""
    rise = (1 - np.cos(math.pi * np.arange(fade) / fade)) / 2
    return np.concatenate([rise, np.ones(size - 2 * fade), rise[::-1]])


def wav_bytes(sound: Spectrum, seconds: float = 2.0, rate: int = RATE) -> bytes:
    """Give the sound as the content of a WAV file: one channel of 16 bits.

    Raises:
        SynthesisError: as :func:`samples`.
    """
    numbers = np.rint(samples(sound, seconds, rate) * _FULL_SCALE).astype("<i2")
    content = io.BytesIO()
    with wave.open(content, "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(rate)
        file.writeframes(numbers.tobytes())
    return content.getvalue()
