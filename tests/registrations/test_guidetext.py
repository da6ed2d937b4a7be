import pytest

from registrations.checks.findings import Level
from registrations.guide import entry_of
from registrations.guidetext import (
    Effect,
    because,
    breaks_ladder,
    clashes_words,
    companion_words,
    effects,
    ground_words,
    label,
    labels,
    parties,
    party_name,
    party_words,
    stop_ladder,
)
from registrations.guidewords import Heard, heard_of
from tests.builders import a_stop, an_organ
from tests.registrations.guides import CHAMBER, PARISH, TOWN, names
from tests.registrations.test_guidewords import BREAKING


def parties_of(organ, stop):
    return parties(entry_of(organ, stop))


def test_a_stop_is_named_with_its_pitch_or_its_ranks():
    assert label(a_stop("Twelfth 2 2/3")) == "Twelfth 2⅔′"
    assert label(a_stop("Mixture 15.19.22")) == "Mixture III"
    assert label(a_stop("Nightingale (other)")) == "Nightingale"
    assert labels([a_stop("Flute 8"), a_stop("Octave 4")]) == "Flute 8′ and Octave 4′"


def test_what_goes_with_a_stop_stands_by_division_its_own_first():
    great, swell = parties_of(PARISH, "great/trumpet-8")

    assert (party_name(great), great.own) == ("Great", True)
    assert (party_name(swell), swell.own) == ("Swell, through Swell to Great", False)


def test_nearly_all_of_a_division_is_said_in_short():
    great, swell = parties_of(PARISH, "great/trumpet-8")

    assert party_words(great) == (
        "every other stop (Fifteenth 2′ with Principal 4′; "
        "Mixture III with Principal 4′ and Fifteenth 2′)"
    )
    assert party_words(swell) == (
        "Stopped Diapason 8′, Salicional 8′, Flute 4′, Nazard 2⅔′ and Oboe 8′"
    )


def test_a_division_without_a_but_or_a_condition_is_every_stop():
    organ = an_organ(
        great=["Principal 8"],
        swell=["Flute 8 (flute)", "Gamba 8 (string)", "Flute 4 (flute)", "Piccolo 2 (flute)"],
        couplers=["Swell to Great"],
    )

    assert (
        party_words(parties_of(organ, "great/principal-8")[0])
        == "every stop (Piccolo 2′ with Flute 4′)"
    )


def test_a_few_stops_are_named():
    organ = an_organ(great=["Principal 8", "Octave 4", "Twelfth 2 2/3"])
    (great,) = parties_of(organ, "great/principal-8")

    assert party_words(great) == "Octave 4′ and Twelfth 2⅔′ (with Octave 4′)"
    assert companion_words(great.companions[0]) == "Octave 4′"


def test_what_is_added_is_sorted_by_what_it_does():
    organ = an_organ(
        great=[
            "Bourdon 16 (flute stopped)",
            "Principal 8",
            "Gamba 8 (string)",
            "Octave 4",
            "Twelfth 2 2/3",
            "Mixture 15.19.22",
            "Nightingale (other other)",
        ]
    )
    entry = entry_of(organ, "great/principal-8")
    sorted_out = effects(entry, parties(entry)[0])

    assert {effect: names(one.stop for one in found) for effect, found in sorted_out} == {
        Effect.WEIGHT: ["Bourdon"],
        Effect.BODY: ["Gamba"],
        Effect.BRIGHTNESS: ["Octave", "Mixture"],
        Effect.COLOUR: ["Twelfth", "Nightingale"],
    }


def test_an_effect_is_measured_from_what_a_stop_stands_on():
    entry = entry_of(PARISH, "great/twelfth-2-2-3")
    found = dict(effects(entry, parties(entry)[0]))

    assert names(one.stop for one in found[Effect.BODY]) == ["Trumpet"]
    assert Effect.WEIGHT not in found


def test_what_one_rule_speaks_against_is_said_once():
    entry = entry_of(PARISH, "swell/celeste-8")
    (said,) = because(entry.avoid)

    assert (said.rule, said.level) == ("celeste-in-chorus", Level.WARNING)
    assert clashes_words(entry, said) == "Nazard 2⅔′ and Tierce 1⅗′"


def test_a_stop_of_another_division_is_named_with_it():
    entry = entry_of(PARISH, "great/mixture-19-22-26")

    assert clashes_words(entry, because(entry.avoid)[0]) == "Celeste 8′ of the Swell"


def test_nothing_to_avoid_gives_no_reason():
    assert because(entry_of(PARISH, "great/open-diapason-8").avoid) == ()


@pytest.mark.parametrize(
    ("organ", "stop", "words"),
    [
        (PARISH, "great/open-diapason-8", "It may be drawn alone."),
        (PARISH, "great/twelfth-2-2-3", ""),
        (
            TOWN,
            "solo/tuba-8",
            "It is played from the Great, through Solo to Great. It may be drawn alone.",
        ),
        (
            TOWN,
            "echo/vox-humana-8",
            "No keyboard plays this division, so the stop cannot be heard.",
        ),
    ],
)
def test_it_is_said_where_a_stop_is_played_and_whether_alone(organ, stop, words):
    assert ground_words(entry_of(organ, stop)) == words


def test_what_this_organ_cannot_better_is_said():
    words = ground_words(entry_of(CHAMBER, "great/zimbel-22-26"))

    assert words.startswith("This organ cannot do better: On the Great, Zimbel")


def test_the_ladder_of_a_stop_stands_on_what_it_needs():
    picture = stop_ladder(PARISH, entry_of(PARISH, "great/twelfth-2-2-3"))

    assert picture.words == (
        "8′, at the note played: Open Diapason 8′. 4′, an octave higher: Principal 4′. "
        "2⅔′, an octave and a fifth higher: Twelfth 2⅔′."
    )


def test_the_ladder_of_a_mixture_shows_its_breaks():
    organ = an_organ(great=[a_stop("Mixture", composition=BREAKING)])
    heard = heard_of(organ, organ.divisions[0], organ.divisions[0].stops[0])

    headings = breaks_ladder(heard).headings
    assert [one.lines for one in headings] == [("from C",), ("from c1",)]


def test_without_breaks_the_ladder_has_no_columns():
    assert breaks_ladder(Heard(24, ())).headings == ()
