"""Organs of every shape that an organ file can tell, for Hypothesis."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies as st

from instruments.compass import Compass
from instruments.consoles import Console, Panel, Piston, PistonKind, Place, Touch
from instruments.mixtures import Zone
from instruments.organ import (
    Coupler,
    Coupling,
    Division,
    Half,
    Keyboard,
    KeyboardKind,
    Organ,
    Stop,
    Tremulant,
)
from instruments.tone import Construction, Family

NAMES = st.text(st.characters(exclude_categories=("Cc", "Cs")), min_size=1, max_size=20)
NOTES = st.lists(NAMES, max_size=3).map("\n".join)
LENGTHS = st.sampled_from([Fraction(8, n) for n in range(1, 33)] + [Fraction(16), Fraction(16, 3)])
COMPASSES = st.builds(
    lambda low, high, gaps: Compass(low, high, frozenset(low + gap for gap in gaps)),
    st.integers(-11, 20),
    st.integers(26, 95),
    st.frozensets(st.integers(1, 5)),
)
ZONES = st.builds(Zone, st.integers(-12, 95), st.lists(LENGTHS, min_size=1, max_size=4).map(tuple))
COMPOSITIONS = st.lists(ZONES, max_size=3, unique_by=lambda zone: zone.start).map(
    lambda zones: tuple(sorted(zones, key=lambda zone: zone.start))
)


def stops(number: str, lenders: list[str]):
    return st.builds(
        Stop,
        id=st.just(number),
        name=NAMES,
        length=st.none() | LENGTHS,
        family=st.sampled_from(Family),
        construction=st.sampled_from(Construction),
        ranks=st.integers(1, 60),
        compass=st.none() | COMPASSES,
        composition=COMPOSITIONS,
        rank=st.none() | NAMES,
        borrowed_from=st.none() | st.sampled_from(lenders) if lenders else st.none(),
        half=st.none() | st.sampled_from(Half),
    )


TOUCHES = st.sampled_from(Touch)
SPOTS = st.tuples(st.sampled_from(Panel), st.integers(1, 99), st.integers(1, 99))


@st.composite
def consoles(draw, keyboards, divisions, controls):
    """Consoles of an organ that has these ids."""
    kinds = [
        _pistons(PistonKind.GENERAL),
        _pistons(PistonKind.DIVISIONAL, division=st.sampled_from(divisions)),
    ]
    if controls:
        kinds.append(_pistons(PistonKind.REVERSIBLE, control=st.sampled_from(controls)))
    pistons = draw(st.lists(st.one_of(kinds), max_size=3))
    placed = draw(st.lists(st.sampled_from(controls), unique=True)) if controls else []
    spots = draw(st.lists(SPOTS, min_size=len(placed), max_size=len(placed), unique=True))
    return Console(
        keyboards=tuple(draw(st.lists(st.sampled_from(keyboards), unique=True))),
        places=frozenset(Place(one, *spot) for one, spot in zip(placed, spots, strict=True)),
        pistons=tuple(replace(one, id=f"p{at}") for at, one in enumerate(pistons)),
        knobs_move=draw(st.none() | st.booleans()),
        levels=draw(st.integers(0, 9999)),
        sequencer=draw(st.booleans()),
    )


def _pistons(kind, **moved):
    return st.builds(Piston, st.just(""), NAMES, st.just(kind), touch=TOUCHES, **moved)


@st.composite
def organs(draw):
    keyboards = [
        Keyboard(f"k{at}", draw(NAMES), draw(st.sampled_from(KeyboardKind)), draw(COMPASSES))
        for at in range(draw(st.integers(1, 3)))
    ]
    homes = st.none() | st.sampled_from([one.id for one in keyboards])
    made: list[str] = []
    divisions = []
    for at in range(draw(st.integers(1, 3))):
        rows = []
        for _ in range(draw(st.integers(0, 3))):
            rows.append(draw(stops(f"s{len(made)}", list(made))))
            made.append(rows[-1].id)
        shakes = (Tremulant(f"t{at}", draw(NAMES)),) if draw(st.booleans()) else ()
        home, enclosed = draw(homes), draw(st.booleans())
        divisions.append(Division(f"d{at}", draw(NAMES), home, enclosed, tuple(rows), shakes))
    couplers = tuple(
        Coupler(
            f"c{at}",
            draw(NAMES),
            draw(st.sampled_from(divisions)).id,
            draw(st.sampled_from(keyboards)).id,
            draw(st.sampled_from([16, 8, 4])),
            draw(st.booleans()),
        )
        for at in range(draw(st.integers(0, 3)))
    )
    controls = made + [one.id for d in divisions for one in d.tremulants]
    controls += [one.id for one in couplers]
    return Organ(
        name=draw(NAMES),
        keyboards=tuple(keyboards),
        divisions=tuple(divisions),
        couplers=couplers,
        accessories=tuple(draw(st.lists(NAMES, max_size=2))),
        place=draw(NAMES | st.just("")),
        pitch_hz=draw(st.floats(300, 600)),
        temperament=draw(NAMES),
        coupling=draw(st.sampled_from(Coupling)),
        console=draw(
            consoles([one.id for one in keyboards], [one.id for one in divisions], controls)
        ),
        notes=draw(NOTES),
    )
