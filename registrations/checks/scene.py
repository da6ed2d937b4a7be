"""Scene: all that a rule may look at, worked out once."""

from dataclasses import dataclass, field
from functools import cached_property
from itertools import chain

from instruments.organ import Coupler, Division, Keyboard, KeyboardKind, Organ, Stop, Tremulant
from registrations.combination import Combination, Music, Player, Texture
from registrations.ranks import RankSpan, Tuning, ranks_of, tuning
from registrations.sounding import Reach, Span, reaches, spans_of


@dataclass(frozen=True, eq=False)
class Scene:
    """An organ, a combination on it, what is known of the music, and what sounds."""

    organ: Organ
    combination: Combination
    music: Music = field(default_factory=Music)
    #: A scene that differs little: keyboards that sound as they do there are not worked out again.
    before: "Scene | None" = None

    @cached_property
    def reaches(self) -> tuple[Reach, ...]:
        """Every drawn stop as it is reached from every keyboard."""
        return reaches(self.organ, self.combination)

    @cached_property
    def _reached(self) -> dict[str, tuple[Reach, ...]]:
        reached: dict[str, list[Reach]] = {}
        for one in self.reaches:
            reached.setdefault(one.keyboard, []).append(one)
        return {keyboard: tuple(found) for keyboard, found in reached.items()}

    @cached_property
    def played(self) -> tuple[Keyboard, ...]:
        """The keyboards that hands and feet are put on; if none, all on which anything sounds."""
        wanted = self.combination.hands.keyboards() or set(self._reached)
        return tuple(one for one in self.organ.keyboards if one.id in wanted)

    def spans_on(self, keyboard: Keyboard) -> tuple[Span, ...]:
        """Give the spans of a keyboard, worked out when first asked for."""
        if keyboard.id not in self._spans:
            reached, before = self.reached_on(keyboard.id), self.before
            if before is not None and before.reached_on(keyboard.id) == reached:
                self._spans[keyboard.id] = before.spans_on(keyboard)
            else:
                self._spans[keyboard.id] = spans_of(reached, keyboard)
        return self._spans[keyboard.id]

    @cached_property
    def _spans(self) -> dict[str, tuple[Span, ...]]:
        return {}

    def ranks_on(self, keyboard: Keyboard) -> tuple[RankSpan, ...]:
        """Give the ranks that a keyboard sounds, worked out when first asked for."""
        if keyboard.id not in self._ranks:
            reached, before = self.reached_on(keyboard.id), self.before
            if before is not None and before.reached_on(keyboard.id) == reached:
                self._ranks[keyboard.id] = before.ranks_on(keyboard)
            else:
                parts = map(self._ranks_of, reached)
                self._ranks[keyboard.id] = tuple(chain.from_iterable(parts))
        return self._ranks[keyboard.id]

    @cached_property
    def _ranks(self) -> dict[str, tuple[RankSpan, ...]]:
        return {}

    def _ranks_of(self, reach: Reach) -> tuple[RankSpan, ...]:
        place = reach.stop.id, reach.shift, reach.low, reach.high
        if place not in self._ranks_of_stops:
            self._ranks_of_stops[place] = tuple(ranks_of([reach], self.tuned))
        return self._ranks_of_stops[place]

    @cached_property
    def _ranks_of_stops(self) -> dict[tuple[str, int, int, int], tuple[RankSpan, ...]]:
        """The ranks of each stop as it is reached, with those of the scenes before."""
        return {} if self.before is None else self.before._ranks_of_stops

    @cached_property
    def tuned(self) -> Tuning:
        """How the organ is tuned, which is no matter of what is drawn."""
        return tuning(self.organ) if self.before is None else self.before.tuned

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

    @property
    def ranks(self) -> dict[str, str]:
        """The row of pipes that each stop of the organ uses, by stop id."""
        return self.tuned.pipework.ranks

    def reached_on(self, keyboard_id: str) -> tuple[Reach, ...]:
        """Give what is reached from one keyboard."""
        return self._reached.get(keyboard_id, ())

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
