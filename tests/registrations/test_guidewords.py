from fractions import Fraction

import pytest

from instruments.compass import parse_compass
from instruments.lexicon import Entry, Match
from instruments.mixtures import Zone
from instruments.tone import Construction, Family
from registrations import guidewords
from registrations.checks import RULES
from registrations.guidewords import (
    StopWords,
    heard_of,
    heard_words,
    note_words,
    reason_of,
    words_of,
    zone_words,
)
from tests.builders import a_stop, an_organ

BREAKING = (
    Zone(0, (Fraction(2), Fraction(4, 3))),
    Zone(24, (Fraction(8, 3), Fraction(2))),
    Zone(36, (Fraction(8, 3), Fraction(2))),
)
NASARD = Entry(
    "Nasard",
    "fr",
    Family.FLUTE,
    Construction.OPEN,
    (Fraction(8, 3),),
    compound=False,
    counts=(),
    from_key=None,
    what_for="Colours a flute.",
    traps="Not a reed.",
    source="A book",
)


def on_an_organ(stop, division="great"):
    """Give an organ with this one stop, its division and the stop as it stands there."""
    organ = an_organ(**{division: [stop]})
    return organ, organ.divisions[0], organ.divisions[0].stops[0]


def heard(stop):
    return heard_of(*on_an_organ(stop))


def use(stop, division="great"):
    return words_of(*on_an_organ(stop, division)).use


@pytest.fixture
def lexicon(monkeypatch):
    """Give what makes the lexicon know one thing, or nothing."""

    def know(match):
        monkeypatch.setattr(guidewords, "find_name", lambda name, pedal: match)

    know(None)
    return know


def test_what_is_heard_is_a_note_with_its_cents_and_interval():
    assert heard_words(heard("Nasard 2 2/3")) == (
        "Play c1 (middle C), and you hear g2 (2 cents sharp), an octave and a fifth higher."
    )
    assert note_words(heard("Tierce 1 3/5").notes[0]) == "e3 (14 cents flat)"


def test_a_mixture_is_heard_rank_by_rank():
    assert heard_words(heard("Mixture 15.19.22")) == (
        "Play c1 (middle C), and you hear c3, g3 (2 cents sharp) and c4."
    )


def test_a_stop_of_no_pitch_is_heard_without_one():
    assert heard_words(heard("Drum (percussion)")).endswith("a sound without a pitch.")


@pytest.mark.parametrize(
    ("compass", "shown"), [("C-c4", 24), ("C-b", 12), ("C-B", 0), ("d1-c4", 26)]
)
def test_a_stop_is_shown_at_middle_c_or_where_it_has_pipes(compass, shown):
    assert heard(a_stop("Flute 8", compass=parse_compass(compass))).key == shown


def test_a_mixture_tells_its_breaks_and_no_zone_that_repeats_the_last():
    zones = heard(a_stop("Mixture", composition=BREAKING)).zones

    assert [zone_words(one) for one in zones] == [
        "from C: 2′ and 1⅓′",
        "from c1: 2⅔′ and 2′",
    ]


def test_ranks_that_are_not_known_are_said_to_be_assumed():
    assert heard(a_stop("Mixture", ranks=3)).assumed
    assert not heard("Mixture 15.19.22").assumed
    assert not heard("Flute 8").assumed


def test_what_the_lexicon_says_of_a_stop_like_this_is_taken(lexicon):
    lexicon(Match(NASARD, exact=True))

    words = words_of(*on_an_organ("Nasard 2 2/3 (flute)"))
    assert words == StopWords(
        "Flute: round, few overtones; open pipes.", "Colours a flute.", "Not a reed.", "A book"
    )


def test_a_name_that_is_only_near_is_not_said_to_be_the_one(lexicon):
    lexicon(Match(NASARD, exact=False))

    words = words_of(*on_an_organ("Nasat 2 2/3 (flute)"))
    assert words.use == "The name is near to Nasard. Colours a flute."
    assert words.trap == ""


@pytest.mark.parametrize(
    "stop", ["Nasard 2 2/3 (string)", "Nasard 1 1/3 (flute)", "Nasard 12.15 (flute)"]
)
def test_a_name_of_another_stop_tells_nothing(lexicon, stop):
    lexicon(Match(NASARD, exact=True))

    words = words_of(*on_an_organ(stop))
    assert words.source == ""
    assert words.use != NASARD.what_for


@pytest.mark.parametrize(
    ("stop", "start"),
    [
        ("Diapason 8", "The ground of the chorus"),
        ("Gedackt 8 (flute stopped)", "A gentle ground"),
        ("Double 16", "Adds weight"),
        ("Octave 4", "Lifts and clears"),
        ("Sifflet 1", "The top of the sound"),
        ("Nazard 2 2/3", "Colours a unison with a fifth"),
        ("Tierce 1 3/5", "Colours a unison with a third"),
        ("Septieme 1 1/7", "Colours a unison with a pitch of its own"),
        ("Mixture 15.19.22", "The crown"),
        ("Cornet 1.8.12.15.17 (flute)", "Several ranks that melt"),
        ("Celeste 8 (string undulating)", "Tuned a little apart"),
        ("Trumpet 8 (reed full-length)", "Fire and fullness"),
        ("Krummhorn 8 (reed short)", "A colour with an edge"),
        ("Harp 8 (percussion)", "Struck"),
        ("Nightingale (other other)", "Struck"),
        ("Thing 8 (other other)", "It sounds the notes as they are written"),
    ],
)
def test_without_the_lexicon_tone_and_pitch_say_what_a_stop_is_for(lexicon, stop, start):
    assert use(stop).startswith(start)


def test_in_the_pedals_a_stop_is_for_something_else(lexicon):
    assert use("Subbass 16 (flute)", "pedal").startswith("The bass under everything")
    assert use("Octave 8", "pedal").startswith("Gives the bass its outline")


def test_a_tone_of_its_own_kind_is_called_that(lexicon):
    assert words_of(*on_an_organ("Thing 8 (other other)")).tone == "A tone of its own kind."


def test_a_floating_division_is_no_pedal(lexicon):
    organ = an_organ(great=["Flute 8"], echo=["Flute 16 (flute)"], floating=["echo"])
    echo = organ.division("echo")

    assert words_of(organ, echo, echo.stops[0]).use.startswith("Adds weight")


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.NAME)
def test_every_rule_gives_its_reason_in_one_sentence(rule):
    reason = reason_of(rule.NAME)

    assert reason[0].isupper()
    assert reason.endswith(".")
    assert len(reason) < 250
