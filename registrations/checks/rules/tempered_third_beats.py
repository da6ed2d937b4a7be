"""A pure third beats quickly against the tempered keys of the chord.

Why it matters: a rank of 1 3/5 is tuned pure to its own key. In equal temperament the keys’ own
thirds are wider, so that in a chord the rank and the key beat, more than ten times a second at
middle C, and the chord grows restless. In a tune by itself nothing is there to beat with; in
meantone the thirds are pure, and the rank is at home.
"""

from collections.abc import Iterator

from instruments.compass import MIDDLE_C
from instruments.pitch import semitones
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene
from registrations.checks.sources import BY_CONSTRUCTION, HELMHOLTZ_1863
from registrations.checks.thirds import third_ranks_at
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.ranks import RankSpan, Tuning

NAME, LEVEL, SUBJECT = "tempered-third-beats", Level.ADVICE, Subject.HARMONY
SOURCES = (HELMHOLTZ_1863, BY_CONSTRUCTION)
EXAMPLE = "Choir: Flute 8, 4, 2 2/3, 2 and 1 3/5, for a hymn, on an organ in equal temperament"

#: Slower beats are followed by the ear as a wave, quicker ones make the sound restless. From
#: memory, after H. Helmholtz, On the Sensations of Tone: up to four or six a second are followed.
FOLLOWED_HZ = 6.0


def check(scene: Scene) -> Iterator[Finding]:
    """Find the third-sounding ranks that beat too quickly with the keys of chords, at middle C.

    Where no hands are said nobody is known to play chords, and the cornet's tierce is let be.
    """
    if scene.music.texture is not Texture.CHORDS or not scene.combination.hands:
        return
    for keyboard in judged_keyboards(scene):
        beats: dict[str, float] = {}
        for one in third_ranks_at(scene, keyboard, MIDDLE_C):
            beats[one.stop] = max(beats.get(one.stop, 0.0), abs(_beat(scene.tuned, one)))
        stops = tuple(stop for _, stop in scene.stops if beats.get(stop.id, 0.0) > FOLLOWED_HZ)
        if stops:
            hertz = max(beats[stop.id] for stop in stops)
            yield Finding(
                NAME,
                LEVEL,
                f"{on(keyboard)} {stops_words(stops)} {'beats' if len(stops) == 1 else 'beat'} "
                f"about {hertz:.0f} times a second with the thirds of a chord at middle C: the "
                "rank is tuned pure, the keys are not.",
                Evidence(
                    keyboards=(keyboard.id,),
                    stops=tuple(stop.id for stop in stops),
                    numbers=(("beat_hz", round(hertz, 2)),),
                ),
            )


def _beat(tuned: Tuning, rank: RankSpan) -> float:
    """Give the hertz between the key a third above middle C and a rank at middle C.

    As :func:`registrations.roughness.beat` has it; 0 for a rank that is borrowed from a unison.
    """
    key = MIDDLE_C + semitones(rank.length)
    return tuned.hertz(key) - tuned.hertz(MIDDLE_C + rank.step) * rank.place
