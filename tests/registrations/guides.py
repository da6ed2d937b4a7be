"""Three organs for the tests of the stop guide, and what each entry claims, put to the checks."""

from fractions import Fraction

from instruments.mixtures import Zone
from registrations.checks import run
from registrations.checks.scene import Scene
from registrations.guide import combination_of
from tests.builders import a_stop, an_organ

PARISH = an_organ()
CHAMBER = an_organ(
    great=["Gedackt 8 (flute stopped)", "Flute 4 (flute)", "Quint 2 2/3", "Zimbel 22.26"]
)
TOWN = an_organ(
    great=[
        "Bordun 16 (flute stopped)",
        "Prinzipal 8",
        "Octave 4",
        "Quinte 2 2/3",
        "Mixtur 15.19.22",
    ],
    positive=[
        "Gedackt 8 (flute stopped)",
        "Unda Maris 8 (flute undulating)",
        "Terz 1 3/5 (flute)",
        a_stop("Cornet", "flute", composition=(Zone(24, (Fraction(8), Fraction(4))),)),
        "Cymbelstern (percussion)",
    ],
    solo=["Tuba 8 (reed full-length)", "Quint 5 1/3"],
    echo=["Vox Humana 8 (reed short)"],
    pedal=["Subbass 16 (flute stopped)", "Violon 8", "Choralbass 4", "Rauschpfeife 19.22"],
    floating=["solo", "echo"],
    couplers=[
        "Solo to Positive 4",
        "Solo to Positive",
        "Positive to Great",
        "Solo to Great",
        "Great to Pedal",
        "Great Unison Off",
    ],
)
ORGANS = (PARISH, CHAMBER, TOWN)


def said(organ, entry, companion=None):
    """Give what the checks say of a stop on its ground, and of a companion to it."""
    return run(Scene(organ, combination_of(entry, companion)))


def names(stops):
    return [stop.name for stop in stops]
