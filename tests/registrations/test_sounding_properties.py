"""What must hold for every organ, checked against slow readings key by key."""

import dataclasses
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from instruments.compass import Compass
from instruments.mixtures import Zone
from instruments.organ import Coupling, Organ
from instruments.pipework import stop_compass
from registrations.combination import Combination
from registrations.sounding import pipes_at, reaches, spans
from tests.builders import a_coupler, a_stop, an_organ

NAMES = ("Great", "Swell", "Pedal")
MIXTURE = (Zone(0, (Fraction(1), Fraction(2, 3))), Zone(24, (Fraction(2), Fraction(4, 3))))
COUPLERS = [
    *(f"{name} Unison Off" for name in NAMES),
    *(
        f"{source} to {target}{octave}"
        for source in (*NAMES, "Solo")
        for target in NAMES
        for octave in ("", " 4", " 16")
    ),
]
STOPS = [
    a_stop("Principal 8"),
    a_stop("Flute 16", "flute", rank="flute"),
    a_stop("Flute 2 2/3", "flute", rank="flute"),
    a_stop("Celeste 8", "string", compass=Compass(12, 40)),
    a_stop("Horn 4", "reed", compass=Compass(0, 72, frozenset({1, 3}))),
    a_stop("Mixture", composition=MIXTURE, ranks=2),
]


@st.composite
def organs(draw, most_couplers=5) -> Organ:
    given = {
        name: draw(st.lists(st.sampled_from(STOPS), unique=True, max_size=3))
        for name in ("great", "swell", "pedal", "solo")
    }
    couplers = draw(st.lists(st.sampled_from(COUPLERS), unique=True, max_size=most_couplers))
    organ = an_organ(
        couplers=couplers,
        floating=["solo"],
        compass=draw(st.sampled_from(["C-c3", "C,D,E-c3", "C-c4"])),
        **given,
    )
    return dataclasses.replace(organ, coupling=draw(st.sampled_from(Coupling)))


def combinations(organ: Organ) -> st.SearchStrategy[Combination]:
    stops = [stop.id for _, stop in organ.stops()]
    some = st.frozensets(st.sampled_from(stops)) if stops else st.just(frozenset())
    couplers = frozenset(one.id for one in organ.couplers)
    return some.map(lambda drawn: Combination(drawn | couplers))


organs_and_combinations = organs().flatmap(
    lambda organ: combinations(organ).map(lambda combination: (organ, combination))
)
some_key = st.integers(0, 60)


@given(organs_and_combinations, some_key, st.randoms(use_true_random=False))
def test_the_order_of_the_couplers_never_matters(case, key, random):
    organ, combination = case
    shuffled = dataclasses.replace(
        organ, couplers=tuple(random.sample(organ.couplers, len(organ.couplers)))
    )

    for keyboard in ("great", "swell", "pedal"):
        assert pipes_at(organ, combination, keyboard, key) == pipes_at(
            shuffled, combination, keyboard, key
        )


@given(organs_and_combinations, some_key, st.data())
def test_a_drawn_stop_never_removes_a_pipe(case, key, data):
    organ, combination = case
    more = data.draw(combinations(organ)).drawn | combination.drawn

    for keyboard in ("great", "swell", "pedal"):
        assert pipes_at(organ, combination, keyboard, key) <= pipes_at(
            organ, Combination(more), keyboard, key
        )


@given(organs_and_combinations)
def test_direct_coupling_never_reaches_through_two_couplers(case):
    organ, combination = case
    direct = dataclasses.replace(organ, coupling=Coupling.DIRECT)

    assert all(len(one.via) <= 1 for one in reaches(direct, combination))


@given(organs_and_combinations, some_key)
def test_a_span_holds_what_its_reaches_sound_at_each_key(case, key):
    organ, combination = case
    for keyboard in organ.keyboards:
        found = {
            (one.stop.id, one.shift)
            for one in reaches(organ, combination)
            if one.keyboard == keyboard.id and one.low <= key <= one.high
        }
        told = {
            (part.stop.id, part.shift)
            for span in spans(organ, combination, keyboard.id)
            if span.low <= key <= span.high
            for part in span.parts
        }

        assert told == (found if key <= keyboard.compass.high else set())


@given(organs_and_combinations)
def test_spans_follow_each_other_and_each_differs_from_the_last(case):
    organ, combination = case
    for keyboard in organ.keyboards:
        found = spans(organ, combination, keyboard.id)

        assert found[0].low == keyboard.compass.low
        assert found[-1].high == keyboard.compass.high
        for below, above in pairwise(found):
            assert above.low == below.high + 1
            assert above.parts != below.parts


@settings(max_examples=60)
@given(organs(most_couplers=4), some_key)
def test_every_behaviour_agrees_with_a_slow_reading_key_by_key(organ, key):
    combination = Combination(organ.control_ids())
    slowly = {
        Coupling.DIRECT: opened_directly,
        Coupling.OCTAVES: opened_through_octaves,
        Coupling.CHAINED: opened_by_keys,
    }[organ.coupling]
    for keyboard in organ.keyboards:
        opened = set(slowly(organ, keyboard.id, key)) if key in keyboard.compass else set()
        expected = {
            (stop.id, chest_key)
            for division, chest_key in opened
            for stop in organ.division(division).stops
            if chest_key in stop_compass(organ, organ.division(division), stop)
        }
        found = {
            (one.stop.id, key + one.shift)
            for one in reaches(organ, combination)
            if one.keyboard == keyboard.id and one.low <= key <= one.high
        }

        assert found == expected


def at_home(organ: Organ, keyboard: str) -> list[str]:
    off = {one.source for one in organ.couplers if one.unison_off}
    return [one.id for one in organ.divisions if one.keyboard == keyboard and one.id not in off]


def opened_directly(organ: Organ, keyboard: str, key: int) -> Iterator[tuple[str, int]]:
    yield from ((division, key) for division in at_home(organ, keyboard))
    for one in organ.couplers:
        if one.target == keyboard and not one.unison_off:
            yield one.source, key + one.shift


def opened_through_octaves(organ: Organ, keyboard: str, key: int) -> Iterator[tuple[str, int]]:
    yield from ((division, key) for division in at_home(organ, keyboard))
    for one in organ.couplers:
        home = organ.division(one.source).keyboard
        if one.target != keyboard or one.unison_off:
            continue
        if home in (None, keyboard):
            yield one.source, key + one.shift
        else:
            inside = opened_directly(organ, home, key + one.shift)
            yield from (opened for opened in inside if opened[0] == one.source)


def opened_by_keys(
    organ: Organ, keyboard: str, key: int, passed: tuple[str, ...] = ()
) -> Iterator[tuple[str, int]]:
    """Press a key; let every coupler not passed yet press the next one."""
    yield from ((division, key) for division in at_home(organ, keyboard))
    for one in organ.couplers:
        if one.target != keyboard or one.unison_off or one.id in passed:
            continue
        home = organ.division(one.source).keyboard
        if home in (None, keyboard):
            yield one.source, key + one.shift
        if home is None or key + one.shift not in organ.keyboard(home).compass:
            continue
        yield from opened_by_keys(organ, home, key + one.shift, (*passed, one.id))


def test_the_slow_reading_itself_knows_a_chain():
    organ = an_organ(great=["Principal 8"], swell=["Oboe 8"], pedal=["Bourdon 16"])
    chain = tuple(map(a_coupler, ("Swell to Great 4", "Great to Pedal")))

    opened = opened_by_keys(dataclasses.replace(organ, couplers=chain), "pedal", 7)

    assert set(opened) == {("pedal", 7), ("great", 7), ("swell", 19)}
