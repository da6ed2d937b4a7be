"""Findings: what a check says about a combination, with its evidence."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Level(StrEnum):
    """How much a finding matters."""

    FAULT = "fault"
    WARNING = "warning"
    ADVICE = "advice"


LEVEL_WORDS: dict[Level, str] = {
    Level.FAULT: "will not sound as written",
    Level.WARNING: "almost always unwanted",
    Level.ADVICE: "worth a thought",
}


class Subject(StrEnum):
    """What part of registration a rule is about."""

    PITCH = "pitch"
    COUPLERS = "couplers"
    ACCESSORIES = "accessories"
    PEDAL = "pedal"
    HANDS = "hands"
    HARMONY = "harmony"
    CHANGES = "changes"


@dataclass(frozen=True, slots=True)
class Source:
    """Who says so; ``read`` is False where it is from memory or common practice."""

    title: str
    read: bool = False


@dataclass(frozen=True, slots=True)
class Evidence:
    """What a finding rests on: ids, the lowest and highest key it holds for, lengths, numbers."""

    keyboards: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
    couplers: tuple[str, ...] = ()
    tremulants: tuple[str, ...] = ()
    keys: tuple[int, int] | None = None
    lengths: tuple[Fraction, ...] = ()
    numbers: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault, warning or piece of advice, in a sentence for the player."""

    rule: str
    level: Level
    message: str
    evidence: Evidence = Evidence()


@dataclass(frozen=True, slots=True)
class Remedy:
    """One move that clears a finding: ids to draw, ids to put in."""

    draw: frozenset[str] = frozenset()
    put_in: frozenset[str] = frozenset()
