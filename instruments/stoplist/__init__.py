"""Reading stop lists: text that a person pastes becomes an Organ, and what was not understood."""

from instruments.stoplist.assemble import read_stoplist
from instruments.stoplist.reading import Assumed, LineRead, Reading, StoplistError, Unread
from instruments.stoplist.write import write_stoplist

__all__ = [
    "Assumed",
    "LineRead",
    "Reading",
    "StoplistError",
    "Unread",
    "read_stoplist",
    "write_stoplist",
]
