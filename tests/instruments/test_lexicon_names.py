"""Finding a name: what is found as it stands, what is only near, and what is not found."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.lexicon import LONGEST_NAME, Match, entries, find_name
from instruments.tone import Construction, Family

any_entry = st.sampled_from(entries())


def named(text, **asked):
    match = find_name(text, **asked)
    assert match, text
    return match.entry.name


def lengths(text, **asked):
    return find_name(text, **asked).entry.lengths


@pytest.mark.parametrize(
    "text",
    ["", "   ", "8'", "IV", "Swell to Great", "Great to Pedal", "blah blah", "()", "Pipes", "—",
     "Dulciano", "Hoxn", "The west front was gilded again"],
)  # fmt: skip
def test_what_is_no_stop_is_not_found(text):
    assert find_name(text) is None


def test_a_sentence_that_mentions_a_stop_is_no_stop():
    assert find_name("We heard from the builder that a new trumpet was promised us") is None


def test_a_page_of_text_is_no_stop():
    assert find_name("Trumpet " * LONGEST_NAME) is None


@given(st.text())
def test_any_text_gives_a_match_or_none(text):
    assert isinstance(find_name(text), Match | None)


@given(any_entry)
def test_every_entry_finds_itself_exactly(entry):
    assert find_name(entry.name, entry.language) == Match(entry, exact=True)


@given(any_entry, st.sampled_from([str.upper, str.lower, str.title]))
def test_capitals_are_no_difference(entry, recased):
    match = find_name(recased(entry.name), entry.language)

    assert match.exact
    assert match.entry.language == entry.language


@given(any_entry)
def test_accents_are_no_difference(entry):
    bare = entry.name.translate(str.maketrans("éèêëàâäöôóòøüûúíîïñçåý", "eeeeaaaooooouuuiiincay"))

    assert find_name(bare, entry.language).exact


@pytest.mark.parametrize(
    ("spelled", "name"),
    [
        ("Rohrfloete", "Rohrflöte"),
        ("Rohr-Flöte", "Rohrflöte"),
        ("ROHRFLOTE", "Rohrflöte"),
        ("Subbaß", "Subbass"),
        ("Holpyp", "Holpyp"),
        ("Stopped Diapasons", "Stopped Diapason"),
        ("Open Diap.", "Open Diapason"),
        ("Qvinta", "Quinta"),
        ("15th", "Fifteenth"),
        ("XIX", "XIX"),
    ],
)
def test_spellings_of_one_name_are_exact(spelled, name):
    match = find_name(spelled)

    assert match.exact
    assert match.entry.name == name


@pytest.mark.parametrize(
    "text",
    ["Large Open Diapason", "Open Diapason No. 2", "Open Diapason I", "OPEN DIAPASON (wood) 8 ft",
     "Small Open Diapason [A]"],
)  # fmt: skip
def test_words_that_only_say_which_leave_the_name_exact(text):
    match = find_name(text)

    assert (match.entry.name, match.exact) == ("Open Diapason", True)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Flauto Traverso Harmonico", "Flauto Traverso"),
        ("Mixture IV-V rks", "Mixture"),
        ("Cornet V", "Cornet"),
        ("Sesquialtera II 2 2/3", "Sesquialtera"),
        ("Swell Oboe", "Oboe"),
        ("Cor Anglais (free)", "Cor Anglais"),
        ("Nachthorndiskant", "Nachthorn"),
    ],
)
def test_leftovers_of_length_and_ranks_do_no_harm(text, name):
    assert named(text) == name


@pytest.mark.parametrize(
    ("text", "usual"),
    [
        ("Contra Viola d'Amore", (16, 8)),
        ("Double Cornopean", (16,)),
        ("Kontra Salizional", (16,)),
        ("Kontratrompete", (16, 32)),
        ("Sub Clarabella", (16,)),
    ],
)
def test_contra_double_and_sub_lower_the_usual_length(text, usual):
    assert lengths(text)[:2] == usual


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Open Diapson", "Open Diapason"),
        ("Stpped Diapason", "Stopped Diapason"),
        ("Trumpt", "Trumpet"),
        ("Large Trumpt", "Trumpet"),
        ("Voix Celexte", "Voix Celeste"),
    ],
)
def test_a_misspelt_name_is_found_and_said_to_be_a_guess(text, name):
    match = find_name(text)

    assert (match.entry.name, match.exact) == (name, False)


def test_a_name_with_a_word_unknown_to_us_is_a_guess():
    match = find_name("St Cecilia Trumpet")

    assert (match.entry.name, match.exact) == ("Trumpet", False)


def test_where_the_name_comes_first_the_first_name_counts():
    match = find_name("Trompette de l'oboe", language="fr")

    assert (match.entry.name, match.exact) == ("Trompette", False)


@given(any_entry, st.sampled_from(["qwq", "xqx"]))
def test_foreign_letters_are_never_passed_over_in_silence(entry, letters):
    match = find_name(entry.name[:2] + letters + entry.name[2:], entry.language)

    assert match is None or not match.exact


APART = [
    ("Dulciana", "Dulciaan"), ("Dulciana", "Dulzian"), ("Dolce", "Dulzian"), ("Violón", "Violone"),
    ("Cor de nuit", "Cor anglais"), ("Vox humana", "Voce umana"), ("Quint", "Quintadena"),
    ("Horn", "Nachthorn"), ("Horn", "Gemshorn"), ("Trompete", "Trompes"), ("Piccolo", "Flageolet"),
]  # fmt: skip


@pytest.mark.parametrize(("one", "other"), APART)
def test_stops_that_look_alike_are_kept_apart(one, other):
    found = [find_name(one), find_name(other)]

    assert found[0] != found[1]


def test_a_name_as_near_to_two_unlike_stops_is_neither():
    assert find_name("Dulciano") is None


def test_violon_is_a_string_in_german_and_a_stopped_flute_in_spanish():
    german, spanish = find_name("Violon", "de").entry, find_name("Violon", "es").entry

    assert german.family is Family.STRING
    assert (spanish.family, spanish.construction) == (Family.FLUTE, Construction.STOPPED)


def test_the_language_asked_is_preferred():
    assert lengths("Prestant", language="fr") == (4,)
    assert lengths("Prestant", language="nl")[0] == 8


def test_without_a_language_the_spelling_decides():
    assert find_name("Flûte").entry.language == "fr"
    assert find_name("Flöte").entry.language == "de"
    assert find_name("Flute").entry.language == "en"


@pytest.mark.parametrize(
    ("text", "language", "usual"),
    [("Principal", "en", 8), ("Bourdon", "en", 16), ("Octave", "en", 8), ("Flûte", "fr", 16)],
)
def test_the_pedals_ask_for_their_own_length(text, language, usual):
    assert lengths(text, language=language, pedal=True)[0] == usual


def test_on_the_pedals_most_stops_keep_their_length():
    assert lengths("Oboe", pedal=True) == lengths("Oboe")
