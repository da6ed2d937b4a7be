"""Papers: the sheets a card can be printed on."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper, upright, in mm; ``columns`` is how many divisions may stand abreast."""

    name: str
    width: float
    height: float
    margin: float
    columns: int

    @property
    def measure(self) -> float:
        """The width between the margins in mm."""
        return self.width - 2 * self.margin


#: A4, A5, A6: ISO 216. Letter: 8 1/2 by 11 inches, common practice, no source.
PAPERS: dict[str, Paper] = {
    "a4": Paper("A4", 210, 297, 12, 3),
    "letter": Paper("Letter", 215.9, 279.4, 12, 3),
    "a5": Paper("A5", 148, 210, 8, 2),
    "a6": Paper("A6", 105, 148, 8, 1),
}
DEFAULT_PAPER = PAPERS["a5"]
GUIDE_PAPER = PAPERS["a4"]
