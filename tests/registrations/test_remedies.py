from fractions import Fraction

from instruments.mixtures import Zone
from registrations.checks import run
from registrations.checks.findings import Level, Remedy
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from registrations.combination import Music, Texture
from tests.builders import a_combination, a_stop, an_organ

PARISH = an_organ(tremulants=["great", "swell"])
CHAMBER = an_organ(
    great=["Gedackt 8 (flute stopped)", "Flute 4 (flute)", "Quint 2 2/3", "Zimbel 22.26"]
)
HARMONIUM_LIKE = an_organ(
    great=["Bordun 8 (flute stopped)", "Unda Maris 8 (flute undulating)", "Octave 4"],
    swell=[a_stop("Cornet", "flute", composition=(Zone(24, (Fraction(8), Fraction(4))),))],
    pedal=["Violon 8", "Subbass 16"],
    couplers=["Swell to Great", "Great to Great 16", "Great to Pedal"],
    tremulants=["great"],
)
SOLO = Music(texture=Texture.SOLO)


def draw(*ids):
    return Remedy(draw=frozenset(ids))


def put_in(*ids):
    return Remedy(put_in=frozenset(ids))


def cures(organ, *drawn, music=None, rule=None, **hands):
    found = remedies(Scene(organ, a_combination(*drawn, **hands), music or Music()))
    (moves,) = [moves for finding, moves in found.items() if rule in (None, finding.rule)]
    return moves


def cases():
    """Give some hundred combinations of three organs: every pair of controls, hands on and off."""
    for organ in (PARISH, CHAMBER, HARMONIUM_LIKE):
        controls = sorted(organ.control_ids())
        hands = {"right": organ.keyboards[0].id, "left": organ.keyboards[-1].id}
        for place, control in enumerate(controls):
            other = controls[(place * 7 + 3) % len(controls)]
            third = controls[(place * 5 + 1) % len(controls)]
            yield Scene(organ, a_combination(control, other))
            yield Scene(organ, a_combination(control, other, third, **hands), SOLO)


def test_without_findings_there_is_nothing_to_remedy():
    assert remedies(Scene(PARISH, a_combination("great/open-diapason-8"))) == {}


def test_silencing_the_whole_organ_is_no_remedy():
    moves = cures(an_organ(pedal=["Flute 8"]), "pedal/flute-8", feet="pedal")

    assert moves == ()


def test_every_remedy_clears_its_finding_and_raises_no_other():
    proven = 0
    for scene in cases():
        before = run(scene)
        for finding, moves in remedies(scene, before).items():
            for move in moves:
                combination = scene.combination.moved(move.draw, move.put_in)
                after = run(Scene(scene.organ, combination, scene.music))
                left = {(one.rule, one.evidence.keyboards) for one in after}
                assert left <= {(one.rule, one.evidence.keyboards) for one in before}
                assert finding not in after
                proven += 1

    assert proven > 100


def test_the_gap_below_a_twelfth_is_filled_before_the_twelfth_is_put_in():
    moves = cures(PARISH, "great/open-diapason-8", "great/twelfth-2-2-3")

    assert moves[0] == draw("great/principal-4")
    assert put_in("great/twelfth-2-2-3") in moves[1:]


def test_a_move_that_only_lessens_a_finding_is_no_remedy():
    moves = cures(PARISH, "great/open-diapason-8", "great/mixture-19-22-26")

    assert draw("great/principal-4") not in moves
    assert put_in("great/mixture-19-22-26") in moves


def test_a_move_that_raises_another_finding_is_no_remedy():
    drawn = ["swell/stopped-diapason-8", "swell/tierce-1-3-5"]
    moves = cures(PARISH, *drawn, rule="gap-below-mutation")

    assert draw("swell/nazard-2-2-3") not in moves


def test_a_move_that_makes_another_finding_worse_is_no_remedy():
    drawn = ["great/open-diapason-8", "great/principal-4", "great/mixture-19-22-26"]
    moves = cures(PARISH, *drawn, "great/tremulant", rule="tremulant-on-chorus")

    assert moves == (put_in("great/tremulant"),)


def test_a_coupler_that_brings_the_solo_is_put_in():
    drawn = ["great/open-diapason-8", "swell/oboe-8", "swell-to-great"]
    moves = cures(PARISH, *drawn, music=SOLO, right="swell", left="great")

    assert moves == (put_in("swell-to-great"),)


def test_a_silent_coupler_is_first_put_in_then_given_something_to_carry():
    moves = cures(PARISH, "great/open-diapason-8", "swell-to-great")

    assert moves[0] == put_in("swell-to-great")
    assert draw("swell/oboe-8") in moves


def test_a_finding_that_no_single_move_clears_keeps_an_empty_list():
    organ = an_organ(great=["Principal 8"], swell=[])

    assert cures(organ, "great/principal-8", right="swell", left="swell") == ()


def test_silence_under_a_hand_is_helped_by_its_own_stops_before_couplers():
    organ = an_organ(great=["Principal 8"], swell=["Oboe 8"], couplers=["Great to Swell"])
    moves = cures(organ, "great/principal-8", right="swell", left="great")

    assert moves == (draw("swell/oboe-8"), draw("great-to-swell"))


def test_accessories_alone_are_helped_by_any_stop():
    moves = cures(PARISH, "great/tremulant")

    assert moves[0] == put_in("great/tremulant")
    assert draw("great/trumpet-8") not in moves


def test_two_findings_of_one_rule_have_remedies_of_their_own():
    drawn = ["swell/stopped-diapason-8", "swell/nazard-2-2-3"]
    found = remedies(Scene(PARISH, a_combination(*drawn, "swell-to-great", "swell-to-great-4")))
    gaps = [finding for finding in found if finding.rule == "gap-below-mutation"]

    assert [finding.level for finding in gaps] == [Level.ADVICE] * 2
