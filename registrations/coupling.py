"""Coupling: by which ways the keys of a keyboard come to the chests of the divisions."""

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass

from instruments.compass import Compass
from instruments.organ import Coupler, Coupling, Division, Keyboard, Organ

#: So many ways to the same keys, each with other couplers left to pass, are followed. More come
#: about only where couplers lead in circles at several octaves.
_ALTERNATIVES = 8


@dataclass(frozen=True, slots=True)
class Route:
    """A way from a keyboard to a division: key ``k`` opens the chest at ``k + shift`` semitones.

    ``via`` names the couplers passed, none at home; ``keys`` are the played keys that pass them
    all. Whether the chest has pipes there is the stop's matter.
    """

    keyboard: str
    division: str
    shift: int
    via: tuple[str, ...]
    keys: Compass


@dataclass(frozen=True, slots=True)
class _Action:
    """The drawn couplers, sorted by keyboard, and the divisions each keyboard opens by itself."""

    compasses: dict[str, Compass]
    homes: dict[str, str | None]
    unisons: dict[str, tuple[str, ...]]
    into: dict[str, tuple[Coupler, ...]]
    ahead: dict[str, frozenset[str]]

    def is_own(self, coupler: Coupler) -> bool:
        return self.homes[coupler.source] == coupler.target


@dataclass(frozen=True, slots=True)
class _Pressed:
    """Keys of a keyboard that go down ``shift`` semitones from the played ``keys``."""

    keyboard: str
    shift: int
    keys: Compass
    via: tuple[str, ...] = ()


def routes(organ: Organ, drawn: frozenset[str]) -> tuple[Route, ...]:
    """Give every way the drawn couplers and the action open, keyboard by keyboard.

    Ids in ``drawn`` that are no couplers of this organ are passed over. A division reached by two
    couplers on the played keyboard has two routes; what lies behind one of them has one.
    """
    action = _action(organ, drawn)
    reading = {
        Coupling.DIRECT: _direct,
        Coupling.OCTAVES: _octaves,
        Coupling.CHAINED: _chained,
    }[organ.coupling]
    found: list[Route] = []
    for keyboard in organ.keyboards:
        for division in action.unisons[keyboard.id]:
            found.append(Route(keyboard.id, division, 0, (), keyboard.compass))
        for coupler in action.into[keyboard.id]:
            shortest: dict[tuple[str, int, Compass], Route] = {}
            for way in reading(action, keyboard, coupler):
                shortest.setdefault((way.division, way.shift, way.keys), way)
            found.extend(shortest.values())
    return tuple(found)


def meet(keys: Compass, others: Compass, shift: int) -> Compass:
    """Give the ``keys`` whose neighbours ``shift`` semitones up are among ``others``.

    Where there are none, the low end is above the high one.
    """
    missing = keys.missing
    if others.missing:
        missing = missing | {key - shift for key in others.missing}
    return Compass(max(keys.low, others.low - shift), min(keys.high, others.high - shift), missing)


def _action(organ: Organ, drawn: frozenset[str]) -> _Action:
    couplers = [one for one in organ.couplers if one.id in drawn]
    off = {one.source for one in couplers if one.unison_off}
    return _Action(
        compasses={one.id: one.compass for one in organ.keyboards},
        homes={one.id: one.keyboard for one in organ.divisions},
        unisons={one.id: _unisons(organ.divisions, one, off) for one in organ.keyboards},
        into={
            keyboard.id: tuple(
                one for one in couplers if one.target == keyboard.id and not one.unison_off
            )
            for keyboard in organ.keyboards
        },
        ahead={one.id: _ahead(one.id, organ.divisions, couplers) for one in organ.keyboards},
    )


def _ahead(
    keyboard: str, divisions: tuple[Division, ...], couplers: list[Coupler]
) -> frozenset[str]:
    """Give the couplers that a way can come to from a keyboard, by whatever others."""
    homes = {one.id: one.keyboard for one in divisions}
    found: set[str] = set()
    waiting: list[str | None] = [keyboard]
    while waiting:
        here = waiting.pop()
        onward = [one for one in couplers if one.target == here and one.id not in found]
        found |= {one.id for one in onward}
        waiting += [homes[one.source] for one in onward]
    return frozenset(found)


def _unisons(divisions: tuple[Division, ...], keyboard: Keyboard, off: set[str]) -> tuple[str, ...]:
    return tuple(one.id for one in divisions if one.keyboard == keyboard.id and one.id not in off)


def _direct(action: _Action, keyboard: Keyboard, coupler: Coupler) -> Iterator[Route]:
    yield Route(keyboard.id, coupler.source, coupler.shift, (coupler.id,), keyboard.compass)


def _octaves(action: _Action, keyboard: Keyboard, coupler: Coupler) -> Iterator[Route]:
    """Give the coupler's routes, read through the source's own octave couplers and unison-off."""
    home = action.homes[coupler.source]
    if home is None or home == keyboard.id:
        yield from _direct(action, keyboard, coupler)
        return
    if coupler.source in action.unisons[home]:
        yield from _direct(action, keyboard, coupler)
    for own in action.into[home]:
        if own.source == coupler.source:
            shift = coupler.shift + own.shift
            yield Route(keyboard.id, coupler.source, shift, (coupler.id, own.id), keyboard.compass)


def _chained(action: _Action, keyboard: Keyboard, coupler: Coupler) -> Iterator[Route]:
    """Give all that goes down with the coupler's keys: any chain, each coupler once on a way."""
    waiting = deque([(_Pressed(keyboard.id, 0, keyboard.compass), coupler)])
    seen: dict[tuple[str, int], list[_Pressed]] = {}
    while waiting:
        pressed, passed = waiting.popleft()
        via = (*pressed.via, passed.id)
        shift = pressed.shift + passed.shift
        home = action.homes[passed.source]
        if home is None or action.is_own(passed):
            # An octave coupler of one keyboard works on the chest, past unison-off and past the
            # end of the keys.
            yield Route(keyboard.id, passed.source, shift, via, pressed.keys)
        if home is None:
            continue
        moved = _Pressed(home, shift, meet(pressed.keys, action.compasses[home], shift), via)
        if moved.keys.low > moved.keys.high or _adds_nothing(moved, seen, action):
            continue
        for division in action.unisons[home]:
            if division != passed.source or not action.is_own(passed):
                yield Route(keyboard.id, division, shift, via, moved.keys)
        waiting.extend((moved, one) for one in action.into[home] if one.id not in via)


def _adds_nothing(
    moved: _Pressed, seen: dict[tuple[str, int], list[_Pressed]], action: _Action
) -> bool:
    """Tell whether the same keys went down before with no less left to pass; if not, note them."""
    earlier = seen.setdefault((moved.keyboard, moved.shift), [])
    ahead = action.ahead[moved.keyboard]
    spent = ahead.intersection(moved.via)
    if len(earlier) == _ALTERNATIVES or any(
        _covers(one.keys, moved.keys) and ahead.intersection(one.via) <= spent for one in earlier
    ):
        return True
    earlier.append(moved)
    return False


def _covers(keys: Compass, others: Compass) -> bool:
    return keys.low <= others.low and keys.high >= others.high and keys.missing <= others.missing
