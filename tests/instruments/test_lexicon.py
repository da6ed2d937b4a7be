"""The entries of the lexicon: well-formed, many, and each with its source."""

import csv
from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest

from instruments import lexicon
from instruments.lexicon import LANGUAGES, entries
from instruments.pitch import is_octave
from instruments.tone import Construction, Family

COLUMNS = (
    "name,language,family,construction,lengths,compound,counts,from_key,what_for,traps,source,"
    "pedal_lengths"
)
REEDS = {
    Construction.FULL_LENGTH,
    Construction.HALF_LENGTH,
    Construction.NARROW_CONICAL,
    Construction.SHORT,
    Construction.FREE,
    Construction.OTHER,
}


def one(name, language):
    return next(entry for entry in entries() if (entry.name, entry.language) == (name, language))


def test_the_file_has_the_columns_of_an_entry():
    with Path(lexicon.__file__).with_name("lexicon.csv").open(encoding="utf-8") as file:
        assert next(csv.reader(file)) == COLUMNS.split(",")


def test_there_are_six_hundred_names_in_eight_languages():
    spoken = Counter(entry.language for entry in entries())

    assert sum(spoken.values()) >= 600
    assert len([language for language, count in spoken.items() if count >= 30]) >= 8


def test_every_language_has_its_place_in_the_order():
    assert {entry.language for entry in entries()} == set(LANGUAGES)


def test_no_name_stands_twice_in_one_language():
    names = Counter((entry.name, entry.language) for entry in entries())

    assert [name for name, count in names.items() if count > 1] == []


def test_every_entry_says_what_it_is_for_and_where_it_comes_from():
    for entry in entries():
        assert entry.what_for.endswith(".")
        assert entry.source


def test_what_a_stop_is_for_is_said_in_a_sentence_or_so():
    assert max(len(entry.what_for) for entry in entries()) <= 160


def test_lengths_are_ones_an_organ_has():
    for entry in entries():
        assert all(Fraction(1, 4) <= length <= 64 for length in entry.lengths), entry
        assert len(set(entry.lengths)) == len(entry.lengths), entry


def test_only_compounds_bells_and_devices_have_no_usual_length():
    silent = {entry.family for entry in entries() if not entry.compound and not entry.lengths}

    assert silent <= {Family.PERCUSSION, Family.OTHER}


def test_only_compounds_have_counts_and_they_have_no_length():
    for entry in entries():
        assert not (entry.counts and not entry.compound), entry
        assert not (entry.lengths and entry.compound), entry
        assert list(entry.counts) == sorted(entry.counts), entry


def test_resonators_belong_to_reeds():
    for entry in entries():
        if entry.family is Family.REED:
            assert entry.construction in REEDS, entry
        elif entry.construction is not Construction.OTHER:
            assert entry.construction not in REEDS, entry


def test_stops_from_a_key_upward_begin_at_tenor_c_or_middle_c():
    assert {entry.from_key for entry in entries()} == {None, 12, 24}


def test_a_celeste_begins_at_tenor_c_and_a_cornet_at_middle_c():
    assert one("Voix Celeste", "en").from_key == 12
    assert one("Cornet", "en").from_key == 24


@pytest.mark.parametrize("name", ["Twelfth", "Nineteenth", "Seventeenth"])
def test_chorus_mutations_are_principal_toned(name):
    """Common practice, no source."""
    entry = one(name, "en")

    assert entry.family is Family.PRINCIPAL
    assert not is_octave(entry.lengths[0])


@pytest.mark.parametrize("name", ["Nazard", "Tierce", "Larigot"])
def test_solo_mutations_are_flute_toned(name):
    """Common practice, no source."""
    entry = one(name, "fr")

    assert entry.family is Family.FLUTE
    assert not is_octave(entry.lengths[0])


def test_the_usual_length_comes_first():
    assert one("Spitzflöte", "de").lengths == (4, 2, 8)


def test_the_pedals_have_lengths_of_their_own_where_they_differ():
    assert one("Principal", "en").pedal_lengths == (8,)
    assert one("Oboe", "en").pedal_lengths == ()
