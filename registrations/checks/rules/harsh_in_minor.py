"""A third-sounding rank makes the chords of a minor key harsh.

Why it matters: a tierce sounds a major third above each note, and above the keynote of a minor key
that contradicts the minor third of the chord: e rubs against e flat. How much depends on what else
sounds: beside trumpets it is lost, over a clear chorus it stands in the open. For chords in minor
leave the rank out. A tune has no chord to contradict, and a major chord has that third itself.
"""

import re
from collections.abc import Iterator

from instruments.compass import parse_key
from instruments.organ import Keyboard
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.judged import judged_keyboards
from registrations.checks.scene import Scene
from registrations.checks.sources import COMMON_PRACTICE, SETHARES_1993, TONE_MODEL
from registrations.checks.thirds import thirds_at
from registrations.checks.words import on, stops_words
from registrations.combination import Texture
from registrations.roughness import roughness
from registrations.spectrum import spectrum_of

NAME, LEVEL, SUBJECT = "harsh-in-minor", Level.ADVICE, Subject.HARMONY
SOURCES = (COMMON_PRACTICE, SETHARES_1993, TONE_MODEL)
EXAMPLE = "Great: Principals 8, 4 and 2 with a Sesquialtera, for a hymn in G minor"

#: By so much a rank may roughen the chord. Set by what the model says of common combinations at
#: middle C: a tierce over trumpets 1.07, in a cornet of flutes 1.38, over principals 8 4 2 1.6, a
#: principal Sesquialtera over them 1.9. Where to draw the lines is our choice, no source. The model
#: roughens major triads nearly as much: it hears partials, and not that the third is foreign.
HARSH, VERY_HARSH = 1.25, 1.75

_MINOR = re.compile(r"\s*([A-Ga-g][#♯b♭]?)[\s-]*(minor|min|moll|mineur|minore)\b", re.IGNORECASE)
#: The keynote is taken from g to f sharp 1, in the middle of the compass.
_LOWEST_KEYNOTE = 19


def check(scene: Scene) -> Iterator[Finding]:
    """Find the third-sounding stops that roughen the minor triad on the keynote too much."""
    keynote = minor_keynote(scene.music.key)
    if keynote is None or scene.music.texture is not Texture.CHORDS:
        return
    triad = (keynote, keynote + 3, keynote + 7)
    for keyboard in judged_keyboards(scene):
        thirds = thirds_at(scene, keyboard, keynote)
        growth = _growth(scene, keyboard, triad, thirds) if thirds else 0.0
        if growth < HARSH:
            continue
        stops = tuple(stop for _, stop in scene.stops if stop.id in thirds)
        yield Finding(
            NAME,
            Level.WARNING if growth >= VERY_HARSH else LEVEL,
            f"{on(keyboard)} {stops_words(stops)} {'sounds' if len(stops) == 1 else 'sound'} a "
            f"major third over the minor chord: it is {growth:.1f} times as rough as without.",
            Evidence(
                keyboards=(keyboard.id,),
                stops=tuple(stop.id for stop in stops),
                keys=(triad[0], triad[-1]),
                numbers=(("roughness_ratio", round(growth, 2)),),
            ),
        )


def minor_keynote(key: str) -> int | None:
    """Give the keynote of a minor key as a key from g to f sharp 1; None for any other text."""
    match = _MINOR.match(key)
    if match is None:
        return None
    step = parse_key(match[1][0].upper() + match[1][1:])
    return _LOWEST_KEYNOTE + (step - _LOWEST_KEYNOTE) % 12


def _growth(
    scene: Scene, keyboard: Keyboard, triad: tuple[int, ...], thirds: frozenset[str]
) -> float:
    """Give how many times as rough a triad is as it would be without some stops."""
    ranks = scene.ranks_on(keyboard)
    without = [one for one in ranks if one.stop not in thirds]
    before = roughness(spectrum_of(without, scene.tuned, *triad))
    return roughness(spectrum_of(ranks, scene.tuned, *triad)) / before if before else 0.0
