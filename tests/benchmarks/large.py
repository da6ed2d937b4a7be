"""A large organ, for measuring."""

from instruments.organ import Organ
from registrations.combination import Combination
from tests.builders import a_combination, an_organ

FEET = ("16", "8", "8", "4", "2 2/3", "2", "1 3/5")
TONES = ("principal", "flute", "string")
NAMES = ("great", "swell", "choir", "solo", "pedal")


def a_large_organ() -> Organ:
    """Eighty stops on five keyboards, and all the couplers there can be between them."""
    stops = [f"Stop{n} {FEET[n % 7]} ({TONES[n % 3]})" for n in range(15)] + ["Mixture 15.19.22"]
    couplers = [
        f"{source.title()} to {target.title()}{octave}"
        for source in NAMES
        for target in NAMES
        for octave in ("", " 4", " 16")
        if source != "pedal" and (source != target or octave)
    ]
    return an_organ(couplers=couplers, tremulants=["great"], **dict.fromkeys(NAMES, stops))


def half_of_it(organ: Organ) -> Combination:
    """Every other stop, every fifth coupler and the tremulant."""
    stops = [stop.id for _, stop in organ.stops()][::2]
    return a_combination(*stops, "great/tremulant", *(one.id for one in organ.couplers[::5]))
