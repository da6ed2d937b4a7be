"""Layout: a pasted list as pieces, in the order that a plain list would have."""

from collections.abc import Sequence
from itertools import islice

from instruments.stoplist.layout.columns import unrolled
from instruments.stoplist.layout.lostheads import headed
from instruments.stoplist.layout.pieces import Piece
from instruments.stoplist.layout.vertical import Line, joined

__all__ = ["Piece", "layout"]


def layout(lines: Sequence[tuple[int, str]], most: int) -> tuple[Piece, ...]:
    """Give what numbered lines hold, piece by piece.

    Columns come one after another, run-on lines are cut apart, figures stand beside their names,
    and a list that has lost its headings gets guessed ones. Every line that is not blank is in at
    least one piece, unless there are more than ``most`` pieces: then no more are looked for.
    """
    named = joined([Line(number, text) for number, text in lines])
    pieces = list(islice(unrolled(named), most + 1))
    return tuple(pieces if len(pieces) > most else headed(pieces))
