"""A drawn stop has no pipes of its own on a keyboard: others open them already.

Why it matters: on organs with borrowed and extended ranks two knobs may lead to one row of pipes. A
pipe that is asked for twice speaks once, so the second knob adds nothing, however much is hoped of
it. The same comes about when an octave coupler finds the pipes that another stop of its rank has
drawn. Draw a stop with a rank of its own.
"""

from collections import Counter
from collections.abc import Iterator

from instruments.organ import Keyboard, Stop
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, CONSOLE_ARTICLE
from registrations.checks.words import listed, on, stop_words, stops_words
from registrations.sounding import Row, rows_opened

NAME, LEVEL, SUBJECT = "duplicate-pipes", Level.ADVICE, Subject.PITCH
SOURCES = (CONSOLE_ARTICLE, BY_CONSTRUCTION)
EXAMPLE = "Pedal: Bass Flute 8 and Flute 8, both from the Swell’s Stopped Flute"

#: The keys at which each row of pipes is opened, a bit a key.
_Rows = dict[Row, int]


def check(scene: Scene) -> Iterator[Finding]:
    """Find the stops that bring no pipe of their own at more than half of their keys, wherever.

    Of two that are the same pipes the borrowed one is found, else the later.
    """
    shared = _shared(scene)
    keyboards = judged_keyboards(scene) if shared else ()
    opened = {one: _opened(scene, one, shared) for one in keyboards}
    for stop in sorted(shared, key=lambda one: one.borrowed_from is None):
        places = [(one, rows.pop(stop), rows) for one, rows in opened.items() if stop in rows]
        idle = [_idle(own, others) for _, own, others in places]
        if places and all(2 * keys > of for keys, of in idle):
            keyboard, own, others = places[0]
            lenders = [one for one, rows in others.items() if rows.keys() & own.keys()]
            yield _finding(scene, keyboard, stop, lenders, idle[0])
        else:
            for _, own, others in places:
                others[stop] = own


def _shared(scene: Scene) -> list[Stop]:
    """Give the drawn stops whose rank another drawn stop uses too, the last ones first."""
    if all(stop.borrowed_from is None and stop.rank is None for _, stop in scene.stops):
        return []
    ranks = scene.tuned.pipework.ranks
    used = Counter(ranks[stop.id] for _, stop in scene.stops)
    return [stop for _, stop in reversed(scene.stops) if used[ranks[stop.id]] > 1]


def _opened(scene: Scene, keyboard: Keyboard, stops: list[Stop]) -> dict[Stop, _Rows]:
    opened: dict[Stop, _Rows] = {}
    for reach in scene.reached_on(keyboard.id):
        if reach.stop in stops:
            rows = opened.setdefault(reach.stop, {})
            keys = (1 << reach.high + 1) - (1 << reach.low)
            for row in rows_opened(reach, scene.tuned.pipework.ranks):
                rows[row] = rows.get(row, 0) | keys
    return opened


def _idle(own: _Rows, others: dict[Stop, _Rows]) -> tuple[int, int]:
    """Count the keys at which others open all the pipes that a stop has, and all its keys."""
    sounding = bare = 0
    for row, keys in own.items():
        sounding |= keys
        for rows in others.values():
            keys &= ~rows.get(row, 0)
        bare |= keys
    return (sounding & ~bare).bit_count(), sounding.bit_count()


def _finding(
    scene: Scene, keyboard: Keyboard, stop: Stop, lenders: list[Stop], idle: tuple[int, int]
) -> Finding:
    keys, of = idle
    where = "" if keys == of else f" at {keys} of its {of} keys"
    couplers = dict.fromkeys(
        coupler
        for reach in scene.reached_on(keyboard.id)
        if reach.stop in lenders
        for coupler in reach.via
    )
    names = [one.name for one in scene.couplers if one.id in couplers]
    through = f", through {listed(names)}," if names else ""
    return Finding(
        NAME,
        LEVEL,
        f"{on(keyboard)} {stop_words(stop)} adds nothing{where}: {stops_words(lenders)}{through} "
        f"{'opens' if len(lenders) == 1 else 'open'} the same pipes.",
        Evidence(
            keyboards=(keyboard.id,),
            stops=(stop.id, *(one.id for one in lenders)),
            couplers=tuple(couplers),
            numbers=(("keys", keys), ("of_keys", of)),
        ),
    )
