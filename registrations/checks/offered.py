"""Offered: what an organ has for a keyboard, drawn or not."""

from collections.abc import Iterator
from fractions import Fraction

from instruments.organ import Keyboard, Organ
from instruments.pipework import pitches_of


def lengths_offered(organ: Organ, keyboard: Keyboard) -> Iterator[Fraction]:
    """Give the lengths of all stops at home on a keyboard or one coupler away from it."""
    coupled = {one.source for one in organ.couplers if one.target == keyboard.id}
    for division, stop in organ.stops():
        if division.keyboard == keyboard.id or division.id in coupled:
            for zone in pitches_of(stop):
                yield from zone.lengths
