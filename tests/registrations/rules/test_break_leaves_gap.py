from fractions import Fraction

import pytest

from instruments.mixtures import Zone, parse_ordinals
from registrations.checks.findings import Level
from registrations.checks.rules import break_leaves_gap
from tests.builders import a_stop, an_organ
from tests.registrations.rules.helpers import findings


def a_mixture(name, **zones):
    """``a_mixture("Fourniture", k0="19.22.26", k24="12.15.19")``: counts from each key on."""
    composition = tuple(
        Zone(int(start[1:]), parse_ordinals(counts)) for start, counts in zones.items()
    )
    return a_stop(name, ranks=len(composition[0].lengths), composition=composition)


ORGAN = an_organ(
    great=[
        "Principal 8",
        "Octave 4",
        "Fifteenth 2",
        "Sifflet 1",
        "Flute 8 (flute)",
        "Piccolo 2 (flute)",
        "Flageolet 1 (flute)",
        a_mixture("Grave Mixture", k0="12.15", k12="8.12"),
        # Wikipedia, “Mixture (organ stop)”: a typical Great Fourniture, without its top zone.
        a_mixture("Fourniture", k0="19.22.26.29", k12="15.19.22.26", k24="12.15.19.22"),
        # The Fourniture and Cymbale of a French plein jeu, from memory (Dom Bedos, 1766).
        a_mixture("Plein Jeu", k0="22.26.29", k17="15.19.22", k29="8.12.15"),
        a_mixture("Cymbale", k0="29.33.36", k12="22.26.29", k24="15.19.22", k41="12.15.19"),
        a_stop("Zimbel", ranks=3, composition=(Zone(0, parse_ordinals("29.33.36")),)),
        a_stop("Carillon", ranks=3, composition=(Zone(0, parse_ordinals("26.29.33")),)),
    ],
    pedal=[
        "Subbass 16 (flute stopped)",
        "Octave 8",
        "Choralbass 4",
        a_mixture("Rauschwerk", k0="22.26", k12="15.19"),
    ],
    couplers=["Great to Great 4"],
)
CHORUS = ("principal-8", "octave-4", "fifteenth-2")
PEDALS = ("pedal/subbass-16", "pedal/octave-8", "pedal/choralbass-4")


@pytest.mark.parametrize(
    "drawn",
    [
        [*CHORUS, "fourniture"],
        [*CHORUS, "plein-jeu"],
        [*CHORUS, "plein-jeu", "cymbale"],
        [*CHORUS, "sifflet-1", "cymbale", "fourniture", "great-to-great-4"],
        [*CHORUS, "flageolet-1", "fourniture"],
        [*CHORUS, "sifflet-1"],
        ["principal-8", "piccolo-2", "grave-mixture"],
        ["flute-8", "piccolo-2", "flageolet-1", "plein-jeu"],
        [],
    ],
)
def test_mixtures_that_lie_close_upon_their_chorus_are_quiet(drawn):
    assert findings(break_leaves_gap, ORGAN, *drawn) == []


def test_a_chorus_without_its_fifteenth_is_another_matter():
    assert findings(break_leaves_gap, ORGAN, "principal-8", "octave-4", "cymbale") == []


@pytest.mark.parametrize("mixture", ["zimbel", "carillon"])
def test_a_mixture_whose_breaks_nobody_told_is_quiet(mixture):
    assert findings(break_leaves_gap, ORGAN, *CHORUS, mixture) == []


def test_a_cymbale_without_the_fourniture_leaves_a_hole_until_it_breaks():
    (finding,) = findings(break_leaves_gap, ORGAN, *CHORUS, "cymbale")

    assert finding.level is Level.ADVICE
    assert finding.evidence.stops == ("great/cymbale",)
    assert finding.evidence.keys == (0, 11)
    assert finding.evidence.lengths == (Fraction(1, 2), Fraction(2))
    assert dict(finding.evidence.numbers) == {"step_cents": 2400.0}
    assert finding.message == (
        "On the Great, from C to B, Cymbale begins at ½′, and the next pitch below it is 2′: "
        "more than an octave is empty between."
    )


def test_a_mixture_that_breaks_below_the_top_of_its_chorus_is_found_from_there():
    (finding,) = findings(break_leaves_gap, ORGAN, *CHORUS, "sifflet-1", "plein-jeu")

    assert finding.evidence.keys == (29, 60)
    assert finding.evidence.lengths == (Fraction(2), Fraction(1))
    assert finding.message == (
        "On the Great, from f1 to c4, Plein Jeu goes no higher than 2′ after it has broken, "
        "and the chorus has a 1′."
    )


def test_another_mixture_can_crown_the_chorus_for_it():
    found = findings(break_leaves_gap, ORGAN, *CHORUS, "sifflet-1", "plein-jeu", "fourniture")

    assert found == []


def test_in_the_pedals_all_is_an_octave_lower():
    (finding,) = findings(break_leaves_gap, ORGAN, *PEDALS, "pedal/rauschwerk")

    assert finding.evidence.keys == (0, 11)
    assert finding.evidence.lengths == (Fraction(1), Fraction(4))
