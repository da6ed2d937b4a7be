"""Figures: what stands before the name of a stop or coupler, on screens and on cards alike."""

import re
from fractions import Fraction

from instruments.organ import Coupler, Stop
from instruments.pitch import length_typeset

_ROMAN = ((50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I"))


def roman(number: int) -> str:
    """Write a number of ranks in Roman figures."""
    figures = ""
    for value, sign in _ROMAN:
        count, number = divmod(number, value)
        figures += sign * count
    return figures


def stop_figure(stop: Stop) -> str:
    """Give the figure of a stop: its ranks if several, its length if it has one (``III 2⅔′``)."""
    ranks = roman(stop.ranks) if stop.ranks > 1 else ""
    length = "" if stop.length is None else length_typeset(stop.length)
    return " ".join(part for part in (ranks, length) if part)


def stop_name(stop: Stop) -> str:
    """Give the name that stands behind the figure: without the ranks, with the half it is."""
    ranks = f" {roman(stop.ranks)}"
    name = stop.name.removesuffix(ranks) if stop.ranks > 1 else stop.name
    return f"{name} ({stop.half})" if stop.half and stop.half not in name.lower() else name


def coupler_figure(coupler: Coupler) -> str:
    """Give the pitch at which a coupler carries, where it is an octave and its name is silent."""
    said = coupler.octave == 8 or re.search(rf"\b{coupler.octave}\b", coupler.name)
    return "" if said or coupler.unison_off else length_typeset(Fraction(coupler.octave))
