"""Reading: what is understood of a stop list, and what is not."""

from dataclasses import dataclass

from instruments.organ import Organ


class StoplistError(ValueError):
    """Text that cannot be read as a stop list; the message is a sentence for the reader."""


@dataclass(frozen=True, slots=True)
class Unread:
    """A line, by its number from 1, that was not understood."""

    line: int
    text: str


@dataclass(frozen=True, slots=True)
class Assumed:
    """A guess, and the line it was made for (0 for the list as a whole)."""

    line: int
    what: str


@dataclass(frozen=True, slots=True)
class LineRead:
    """A line and, in words, how it was read."""

    line: int
    text: str
    read_as: str


@dataclass(frozen=True, slots=True)
class Reading:
    """An organ, the lines not understood, the guesses, and every line with how it was read."""

    organ: Organ
    unread: tuple[Unread, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    lines: tuple[LineRead, ...] = ()
