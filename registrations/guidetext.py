"""Guide text: what the guide found of a stop, gathered and said in sentences for page and paper."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from itertools import groupby

from instruments.compass import key_typeset
from instruments.figures import stop_figure, stop_name
from instruments.organ import Coupler, Division, Organ, Stop
from instruments.pitch import UNISON
from registrations.charts import Column, Ladder, ladder
from registrations.checks.findings import Level
from registrations.checks.kinds import is_chorus_mixture, is_mutation, is_solo_compound
from registrations.checks.words import listed, the
from registrations.guide import Clash, Companion, GuideEntry
from registrations.guidewords import Heard, heard_of

#: Of a division in which no more than these do not fit, the guide says "every stop but".
_FEW = 3


class Effect(StrEnum):
    """What a stop does to the sound of another: common practice, no source."""

    WEIGHT = "for weight"
    BODY = "for body"
    BRIGHTNESS = "for brightness"
    COLOUR = "for colour"


@dataclass(frozen=True, slots=True)
class Party:
    """The stops of one division that go with a stop, the coupler they come by, and the rest.

    ``own``: it is the division of the stop itself.
    """

    division: Division
    coupler: Coupler | None
    companions: tuple[Companion, ...]
    others: tuple[Stop, ...]
    own: bool = False


@dataclass(frozen=True, slots=True)
class Because:
    """The stops that one rule speaks against, and its reason."""

    rule: str
    level: Level
    reason: str
    clashes: tuple[Clash, ...]


def label(stop: Stop) -> str:
    """Name a stop in a sentence, pitch or ranks behind it: ``Twelfth 2⅔′``, ``Mixture III``."""
    return f"{stop_name(stop)} {stop_figure(stop)}".strip()


def labels(stops: Iterable[Stop]) -> str:
    """Name several stops in a sentence; there must be one at least."""
    return listed(map(label, stops))


def parties(entry: GuideEntry) -> tuple[Party, ...]:
    """Gather what a stop goes with by division and coupler, its own division first."""
    base = (entry.stop, *entry.ground.needs)
    gathered = []
    for (division, coupler), found in groupby(entry.good_with, key=_way):
        companions = tuple(found)
        good = [one.stop for one in companions]
        others = tuple(one for one in division.stops if one not in good and one not in base)
        gathered.append(Party(division, coupler, companions, others, division == entry.division))
    return tuple(gathered)


def _way(companion: Companion) -> tuple[Division, Coupler | None]:
    return companion.division, companion.coupler


def party_words(party: Party) -> str:
    """Name the stops of a party; nearly all of a division as ``every stop but Celeste 8′``."""
    if len(party.companions) <= len(party.others) + _FEW or len(party.others) > _FEW:
        return listed(map(companion_words, party.companions))
    others = f" but {labels(party.others)}" if party.others else ""
    needy = [f"{label(one.stop)} with {_needed(one)}" for one in party.companions if one.needs]
    every = "every other stop" if party.own else "every stop"
    return f"{every}{others}" + (f" ({'; '.join(needy)})" if needy else "")


def companion_words(companion: Companion) -> str:
    """Name a companion with what it needs: ``Twelfth 2⅔′ (with Principal 4′)``."""
    if not companion.needs:
        return label(companion.stop)
    return f"{label(companion.stop)} (with {_needed(companion)})"


def _needed(companion: Companion) -> str:
    return labels(companion.needs)


def effects(entry: GuideEntry, party: Party) -> tuple[tuple[Effect, tuple[Companion, ...]], ...]:
    """Sort a party by what each of it does to the sound; effects that nothing has are left out."""
    lengths = (one.length for one in (entry.stop, *entry.ground.needs) if one.length is not None)
    deepest = max(lengths, default=UNISON)
    effect_of = {one.stop: _effect(deepest, one.stop) for one in party.companions}
    sorted_out = (
        (effect, tuple(one for one in party.companions if effect_of[one.stop] is effect))
        for effect in Effect
    )
    return tuple((effect, found) for effect, found in sorted_out if found)


def _effect(deepest: Fraction, added: Stop) -> Effect:
    """Give what a stop does to a sound whose deepest pitch is known."""
    if is_chorus_mixture(added):
        return Effect.BRIGHTNESS
    if is_mutation(added) or is_solo_compound(added) or added.length is None:
        return Effect.COLOUR
    if added.length == deepest:
        return Effect.BODY
    return Effect.WEIGHT if added.length > deepest else Effect.BRIGHTNESS


def party_name(party: Party) -> str:
    """Name where a party stands: ``Swell, through Swell to Great``."""
    if party.coupler is None:
        return party.division.name
    return f"{party.division.name}, through {party.coupler.name}"


def because(clashes: Iterable[Clash]) -> tuple[Because, ...]:
    """Gather clashes by their rule, in the order in which they were met."""
    rules: dict[tuple[str, Level, str], list[Clash]] = {}
    for one in clashes:
        rules.setdefault((one.rule, one.level, one.reason), []).append(one)
    return tuple(Because(*key, tuple(found)) for key, found in rules.items())


def clashes_words(entry: GuideEntry, said: Because) -> str:
    """Name the stops a rule speaks against, with their division where it is another."""
    return listed(_clash_words(entry, one.companion) for one in said.clashes)


def _clash_words(entry: GuideEntry, companion: Companion) -> str:
    words = label(companion.stop)
    if companion.division == entry.division:
        return words
    return f"{words} of {the(companion.division.name)}"


def ground_words(entry: GuideEntry) -> str:
    """Say where a stop is played, and whether it may be drawn alone; what it needs is not said."""
    if entry.place is None:
        return "No keyboard plays this division, so the stop cannot be heard."
    said = []
    if entry.place.coupler is not None:
        said.append(
            f"It is played from {the(entry.place.keyboard.name)}, "
            f"through {entry.place.coupler.name}."
        )
    if not (entry.ground.needs or entry.ground.still):
        said.append("It may be drawn alone.")
    said.extend(f"This organ cannot do better: {one.message}" for one in entry.ground.still)
    return " ".join(said)


def stop_ladder(organ: Organ, entry: GuideEntry) -> Ladder:
    """Give the ladder of a stop as its shown key sounds it, on what it needs beneath it."""
    needs = entry.ground.needs
    return ladder(
        tuple(
            Column(label(stop), _sounding(organ, entry.division, stop), beneath=stop in needs)
            for stop in (*needs, entry.stop)
        )
    )


def _sounding(organ: Organ, division: Division, stop: Stop) -> tuple[Fraction, ...]:
    return tuple(note.length for note in heard_of(organ, division, stop).notes)


def breaks_ladder(heard: Heard) -> Ladder:
    """Give the ladder of a mixture, a column for each stretch of keys between its breaks."""
    zones = heard.zones
    return ladder(tuple(Column(f"from {key_typeset(one.start)}", one.lengths) for one in zones))
