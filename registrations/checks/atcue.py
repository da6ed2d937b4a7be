"""At a cue: a change where it stands, with what was set before it."""

from dataclasses import dataclass

from instruments.organ import Organ
from registrations.registration import Change

#: More controls than this are not moved by hand at a cue while the music goes on. About four a
#: second of free time can be: common practice, no source. Another figure can be given.
MOST_BY_HAND = 8


@dataclass(frozen=True, slots=True)
class AtCue:
    """A change on its organ, and the one before it: None for what is set before the music begins.

    ``most_by_hand`` is how many controls the player moves at a cue.
    """

    organ: Organ
    change: Change
    before: Change | None = None
    most_by_hand: int = MOST_BY_HAND
