"""Combination: what is drawn at one moment, and which keyboard each hand and the feet play."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeVar

from instruments.organ import Organ
from instruments.strictjson import JSONTextError, read_json


class Texture(StrEnum):
    """What the music asks of the hands."""

    CHORDS = "chords"
    SOLO = "solo"
    TRIO = "trio"


class Player(StrEnum):
    """A hand, or the feet."""

    RIGHT = "right"
    LEFT = "left"
    FEET = "feet"


@dataclass(frozen=True, slots=True)
class Hands:
    """The id of the keyboard each hand and the feet play; all None when nothing is said."""

    right: str | None = None
    left: str | None = None
    feet: str | None = None

    def __bool__(self) -> bool:
        return any((self.right, self.left, self.feet))

    def on(self, player: Player) -> str | None:
        """Give the keyboard a hand or the feet play."""
        return {Player.RIGHT: self.right, Player.LEFT: self.left, Player.FEET: self.feet}[player]

    def keyboards(self) -> frozenset[str]:
        """Give the ids of the keyboards that are played."""
        return frozenset(one for one in (self.right, self.left, self.feet) if one)


@dataclass(frozen=True, slots=True)
class Combination:
    """What is drawn (ids of stops, couplers and tremulants) and where the hands and feet are."""

    drawn: frozenset[str] = frozenset()
    hands: Hands = field(default_factory=Hands)

    def moved(self, draw: frozenset[str], put_in: frozenset[str]) -> "Combination":
        """Give the combination after drawing and putting in."""
        return Combination((self.drawn | draw) - put_in, self.hands)


@dataclass(frozen=True, slots=True)
class Music:
    """What is known of the piece that is played on a combination.

    With texture ``solo`` and the hands on two keyboards, ``solo`` says who has the tune: the right
    hand where nothing else is given.
    """

    key: str = ""
    texture: Texture = Texture.CHORDS
    kind: str = ""
    solo: Player = Player.RIGHT


_PIECE = ("key", "texture", "kind", "solo")
_Word = TypeVar("_Word", bound=StrEnum)


class CombinationFileError(ValueError):
    """A file that is not a combination for this organ; the message is a sentence for the reader."""


def parse_combination(text: str, organ: Organ) -> tuple[Combination, Music]:
    """Read a combination file: ``{"drawn": [...], "hands": {...}, "piece": {...}}``.

    Raises:
        CombinationFileError: not JSON, another shape, or ids that this organ does not have.
    """
    try:
        data = read_json(text)
    except JSONTextError as error:
        raise CombinationFileError(f"The combination: {error}") from error
    if not isinstance(data, dict) or not _texts(data.get("drawn")):
        raise CombinationFileError('The combination needs "drawn": a list of ids in quotes.')
    drawn = frozenset(data["drawn"])
    unknown = sorted(drawn - organ.control_ids())
    if unknown:
        raise CombinationFileError(
            f"This organ has no “{unknown[0]}” to draw. See readstops --json."
        )
    return Combination(drawn, _hands(data.get("hands"), organ)), _music(data.get("piece"))


def _texts(value: object) -> bool:
    return isinstance(value, list) and all(isinstance(one, str) for one in value)


def _hands(data: object, organ: Organ) -> Hands:
    if data is None:
        return Hands()
    if not isinstance(data, dict):
        raise CombinationFileError('"hands" must be like {"right": "great", "left": "swell"}.')
    keyboards = [one.id for one in organ.keyboards]
    for player, keyboard in data.items():
        if player not in set(Player):
            raise CombinationFileError(f"“{player}” is not right, left or feet.")
        if keyboard is not None and keyboard not in keyboards:
            raise CombinationFileError(
                f"“{player}” plays “{keyboard}”: this organ has no such keyboard."
            )
    return Hands(**data)


def _music(data: object) -> Music:
    if data is None:
        return Music()
    if not isinstance(data, dict) or not _texts([data.get(one) or "" for one in _PIECE]):
        raise CombinationFileError('"piece" must be like {"key": "c minor", "texture": "solo"}.')
    return Music(
        key=data.get("key") or "",
        texture=_one_of(Texture, data.get("texture") or Texture.CHORDS),
        kind=data.get("kind") or "",
        solo=_one_of(Player, data.get("solo") or Player.RIGHT),
    )


def _one_of(words: type[_Word], written: str) -> _Word:
    try:
        return words(written)
    except ValueError as error:
        known = ", ".join(words)
        raise CombinationFileError(f'In "piece": “{written}” is not one of {known}.') from error
