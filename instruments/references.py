"""References: ids that are used once, and that lead somewhere.

An organ's parts name one another by id; these are the faults that such a net can have.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import chain

from instruments.consoles import PANEL_WORDS, piston_fault
from instruments.organ import Organ


def loose_ends(organ: Organ) -> Iterator[str]:
    """Give a sentence for every id used twice, every name of nothing and every circle."""
    return chain(
        _used_twice(organ),
        _leading_nowhere(organ),
        _circles(organ),
        _console_astray(organ),
        _crowded(organ),
        _kinds(organ),
    )


def _used_twice(organ: Organ) -> Iterator[str]:
    controls = [one.id for one in organ.couplers]
    controls += [one.id for _, one in organ.stops()] + [one.id for _, one in organ.tremulants()]
    for kind, ids in (
        ("keyboard", [one.id for one in organ.keyboards]),
        ("division", [one.id for one in organ.divisions]),
        ("control", controls),
        ("piston", [one.id for one in organ.console.pistons]),
    ):
        for one, count in Counter(ids).items():
            if count > 1:
                yield f"The {kind} id “{one}” is used twice. Give each its own."


def _leading_nowhere(organ: Organ) -> Iterator[str]:
    keyboards = {one.id for one in organ.keyboards}
    divisions = {one.id for one in organ.divisions}
    stops = {one.id for _, one in organ.stops()}
    for division in organ.divisions:
        yield from _unknown(division.keyboard, keyboards, f"division {division.id}: keyboard")
    for coupler in organ.couplers:
        yield from _unknown(coupler.source, divisions, f"coupler {coupler.id}: from")
        yield from _unknown(coupler.target, keyboards, f"coupler {coupler.id}: to")
    for _, stop in organ.stops():
        yield from _unknown(stop.borrowed_from, stops, f"stop {stop.id}: borrowed_from")


def _unknown(wanted: str | None, known: Iterable[str], where: str) -> Iterator[str]:
    if wanted is not None and wanted not in known:
        yield f"{where} names “{wanted}”, which this organ does not have."


def _circles(organ: Organ) -> Iterator[str]:
    lenders = {stop.id: stop.borrowed_from for _, stop in organ.stops()}
    for stop in lenders:
        seen, lender = {stop}, lenders[stop]
        while lender is not None and lender not in seen:
            seen.add(lender)
            lender = lenders.get(lender)
        if lender is not None:
            yield f"stop {stop}: borrowed_from leads round in a circle."


def _console_astray(organ: Organ) -> Iterator[str]:
    keyboards = {one.id for one in organ.keyboards}
    divisions = {one.id for one in organ.divisions}
    controls = organ.control_ids()
    for name in organ.console.keyboards:
        yield from _unknown(name, keyboards, "console: keyboards")
    for piston in organ.console.pistons:
        yield from _unknown(piston.division, divisions, f"piston {piston.id}: division")
        yield from _unknown(piston.control, controls, f"piston {piston.id}: control")
    for place in organ.console.places_in_order():
        yield from _unknown(place.control, controls, "console: places")


def _crowded(organ: Organ) -> Iterator[str]:
    places = organ.console.places_in_order()
    for name, count in Counter(organ.console.keyboards).items():
        if count > 1:
            yield f"console: keyboards names “{name}” twice. It lies in one place."
    for control, count in Counter(one.control for one in places).items():
        if count > 1:
            yield f"console: places has “{control}” twice. It stands in one place."
    for spot, count in Counter((one.panel, one.column, one.row) for one in places).items():
        if count > 1:
            panel, column, row = spot
            yield (
                f"console: places has {count} controls on the {PANEL_WORDS[panel]}, "
                f"column {column}, row {row}. Give each its own place."
            )


def _kinds(organ: Organ) -> Iterator[str]:
    for piston in organ.console.pistons:
        fault = piston_fault(piston)
        if fault:
            yield f"piston {piston.id}: {fault}"
