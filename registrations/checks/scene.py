"""Scene: all that a rule may look at, worked out once."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property

from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ, Stop, Tremulant
from registrations.combination import Combination, Music, Player, Texture
from registrations.sounding import Reach, Span, reaches, spans_of


@dataclass(frozen=True, eq=False)
class Scene:
    """An organ, a combination on it, what is known of the music, and what sounds."""

    organ: Organ
    combination: Combination
    music: Music = field(default_factory=Music)

    @cached_property
    def reaches(self) -> tuple[Reach, ...]:
        """Every drawn stop as it is reached from every keyboard."""
        return reaches(self.organ, self.combination)

    @cached_property
    def played(self) -> tuple[Keyboard, ...]:
        """The keyboards that hands and feet are put on; if none, all on which anything sounds."""
        wanted = self.combination.hands.keyboards() or {one.keyboard for one in self.reaches}
        return tuple(one for one in self.organ.keyboards if one.id in wanted)

    @cached_property
    def spans(self) -> dict[str, tuple[Span, ...]]:
        """The spans of each played keyboard, by its id."""
        return {one.id: spans_of(self.reaches, one) for one in self.played}

    @cached_property
    def stops(self) -> tuple[tuple[Division, Stop], ...]:
        """The drawn stops with their divisions, in console order."""
        drawn = self.combination.drawn
        return tuple((one, stop) for one, stop in self.organ.stops() if stop.id in drawn)

    @cached_property
    def couplers(self) -> tuple[Coupler, ...]:
        """The drawn couplers, unison-offs among them."""
        return tuple(one for one in self.organ.couplers if one.id in self.combination.drawn)

    @cached_property
    def tremulants(self) -> tuple[tuple[Division, Tremulant], ...]:
        """The drawn tremulants with their divisions."""
        drawn = self.combination.drawn
        return tuple((one, shake) for one, shake in self.organ.tremulants() if shake.id in drawn)

    def sounding_spans(self) -> Iterator[tuple[Keyboard, Span]]:
        """Give the stretches of the played keyboards in which something has a pitch."""
        for keyboard in self.played:
            for span in self.spans[keyboard.id]:
                if span.parts:
                    yield keyboard, span

    def reached_on(self, keyboard_id: str) -> tuple[Reach, ...]:
        """Give what is reached from one keyboard."""
        return tuple(one for one in self.reaches if one.keyboard == keyboard_id)

    @property
    def soloist(self) -> Player | None:
        """The hand that has the tune, or the feet; None where the music has no solo."""
        return self.music.solo if self.music.texture is Texture.SOLO else None

    @cached_property
    def pedals_played(self) -> tuple[Keyboard, ...]:
        """What the feet play: where they are put; if nothing is said, the pedals that sound."""
        hands = self.combination.hands
        if hands:
            return tuple(one for one in self.played if one.id == hands.feet)
        return tuple(one for one in self.played if one.kind is KeyboardKind.PEDAL)


def hull(spans: list[Span]) -> tuple[int, int]:
    """Give the lowest and the highest key of spans; there must be one at least."""
    return min(span.low for span in spans), max(span.high for span in spans)
