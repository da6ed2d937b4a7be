"""Spectra: a model of what partials a rank sounds and how strong it is, by how its pipes are made.

MODEL, not published and not measured: real pipes scatter from note to note and from seat to seat
(C. Pykett, 2016, found two straight trend lines to fit most spectra). It is there to compare one
combination with another on one organ, and any row of it can be replaced for an organ.
"""

import re
from dataclasses import dataclass, replace
from functools import lru_cache

from instruments.organ import Stop
from instruments.tone import Construction, Family

#: A way of making pipes; None stands for all that are not named with the family.
Kind = tuple[Family, Construction | None]


@dataclass(frozen=True, slots=True)
class Tone:
    """The tone of one rank.

    ``levels`` are the dB of its partials against the first, from the first up; ``strength`` is the
    dB of all of them together against an Open Diapason.
    """

    levels: tuple[float, ...]
    strength: float


@dataclass(frozen=True, slots=True)
class ToneModel:
    """A tone for each kind of pipes, and the strength that goes with words in stop names."""

    name: str
    tones: tuple[tuple[Kind, Tone], ...]
    strengths: tuple[tuple[str, float], ...] = ()

    def with_tone(self, kind: Kind, tone: Tone) -> "ToneModel":
        """Give the model with another tone for one kind of pipes."""
        return replace(self, tones=((kind, tone), *(one for one in self.tones if one[0] != kind)))


# Partials 1 to 8. Which are strong is told in words by G. L. Miller, The Recent Revolution in Organ
# Building, 2nd ed. 1913 (stopped 1 3 5 7, flutes few, trumpets many) and by Helmholtz, On the
# Sensations of Tone (Quintadena 3, chimney 5, from memory); the figures are assumed.
_STOPPED = (0.0, -32.0, -18.0, -40.0, -30.0, -45.0, -36.0, -50.0)
_CHIMNEY = (0.0, -26.0, -16.0, -30.0, -18.0, -34.0, -30.0, -40.0)
_OPEN_FLUTE = (0.0, -12.0, -22.0, -32.0, -40.0, -46.0, -52.0, -58.0)
_QUINTADENA = (0.0, -30.0, -3.0, -32.0, -12.0, -36.0, -22.0, -40.0)
_PRINCIPAL = (0.0, -4.0, -9.0, -14.0, -19.0, -24.0, -28.0, -32.0)
_TAPERED = (0.0, -8.0, -14.0, -16.0, -14.0, -16.0, -18.0, -24.0)
_STRING = (0.0, 1.0, 0.0, -3.0, -5.0, -8.0, -11.0, -14.0)
_TRUMPET = (0.0, 3.0, 3.0, 2.0, 0.0, -2.0, -4.0, -6.0)
_CROMORNE = (0.0, -18.0, -2.0, -16.0, -5.0, -16.0, -9.0, -18.0)
_VOX_HUMANA = (0.0, -2.0, -3.0, -4.0, -6.0, -6.0, -4.0, -4.0)

# Strengths: the order Dulciana, Stopped Diapason, flute, string, Open Diapason, chorus reed, Tuba
# is common practice, no source; the figures are assumed, and so is the place of the other kinds.
_DULCIANA_DB, _STOPPED_DB, _FLUTE_DB, _STRING_DB = -12.0, -8.0, -6.0, -4.0
_DIAPASON_DB, _CHORUS_REED_DB, _TUBA_DB = 0.0, 3.0, 8.0
_TAPERED_DB = -2.0

_F, _C = Family, Construction

#: Reeds with narrow, free or unknown resonators have the trumpet's row, for want of their own;
#: what is of no family has the principal's. Percussion has none: its partials are no harmonics.
MODEL = ToneModel(
    name="Model of partials and strengths, assumed, not measured",
    tones=(
        ((_F.PRINCIPAL, None), Tone(_PRINCIPAL, _DIAPASON_DB)),
        ((_F.PRINCIPAL, _C.STOPPED), Tone(_STOPPED, _STOPPED_DB)),
        ((_F.PRINCIPAL, _C.CHIMNEY), Tone(_CHIMNEY, _STOPPED_DB)),
        ((_F.PRINCIPAL, _C.NARROW_STOPPED), Tone(_QUINTADENA, _STOPPED_DB)),
        ((_F.PRINCIPAL, _C.TAPERED), Tone(_TAPERED, _TAPERED_DB)),
        ((_F.FLUTE, None), Tone(_OPEN_FLUTE, _FLUTE_DB)),
        ((_F.FLUTE, _C.STOPPED), Tone(_STOPPED, _STOPPED_DB)),
        ((_F.FLUTE, _C.CHIMNEY), Tone(_CHIMNEY, _STOPPED_DB)),
        ((_F.FLUTE, _C.NARROW_STOPPED), Tone(_QUINTADENA, _STOPPED_DB)),
        ((_F.FLUTE, _C.TAPERED), Tone(_TAPERED, _FLUTE_DB)),
        ((_F.STRING, None), Tone(_STRING, _STRING_DB)),
        ((_F.STRING, _C.TAPERED), Tone(_TAPERED, _STRING_DB)),
        ((_F.REED, None), Tone(_TRUMPET, _CHORUS_REED_DB)),
        ((_F.REED, _C.NARROW_CONICAL), Tone(_TRUMPET, _DIAPASON_DB)),
        ((_F.REED, _C.HALF_LENGTH), Tone(_CROMORNE, _TAPERED_DB)),
        ((_F.REED, _C.SHORT), Tone(_VOX_HUMANA, _FLUTE_DB)),
        ((_F.OTHER, None), Tone(_PRINCIPAL, _DIAPASON_DB)),
    ),
    strengths=(("dulciana", _DULCIANA_DB), ("tuba", _TUBA_DB)),
)


def tone_of(stop: Stop, model: ToneModel = MODEL) -> Tone | None:
    """Give the tone of each rank of a stop by the model, or None when its family has none there."""
    tones = dict(model.tones)
    tone = tones.get((stop.family, stop.construction)) or tones.get((stop.family, None))
    if tone is None:
        return None
    words = re.findall(r"\w+", stop.name.casefold())
    named = (strength for word, strength in model.strengths if word in words)
    return replace(tone, strength=next(named, tone.strength))


@lru_cache(maxsize=256)
def partial_powers(tone: Tone) -> tuple[float, ...]:
    """Give the powers of a tone's partials; an Open Diapason's together are 1."""
    shares = [_power(level) for level in tone.levels]
    whole = _power(tone.strength)
    return tuple(whole * share / sum(shares) for share in shares)


def _power(decibels: float) -> float:
    return float(10 ** (decibels / 10))
