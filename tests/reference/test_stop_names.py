"""The kinds of stops as handbooks and builders name them, against the lexicon."""

from pathlib import Path

import pytest

from instruments.lexicon import Entry, entries, find_name
from instruments.pitch import is_octave
from instruments.tone import Family
from tests.reference.tables import rows

TABLES = sorted(path.name for path in Path(__file__).parent.glob("stop_names_*.txt"))
HANDBOOKS = {"stop_names_miller_1913.txt", "stop_names_dom_bedos_1766.txt"}
NAMED = [(table, *row) for table in TABLES for row in rows(table)]


def is_of_kind(entry: Entry, kind: str) -> bool:
    """Tell whether an entry is of one of the tables' kinds."""
    if kind == "compound":
        return entry.compound or entry.family is Family.PERCUSSION
    if kind == "mutation":
        return not entry.compound and not is_octave(entry.lengths[0])
    if kind == "effect":
        return entry.family is Family.OTHER
    if kind == "hybrid":
        return entry.family in {Family.FLUTE, Family.STRING}
    return not entry.compound and entry.family is Family(kind)


@pytest.mark.parametrize(("table", "name", "language", "kind"), NAMED)
def test_the_lexicon_agrees_with_its_authorities(table, name, language, kind):
    match = find_name(name, language)

    assert match.exact
    assert match.entry.language == language
    assert is_of_kind(match.entry, kind), table


@pytest.mark.parametrize(("table", "name", "language", "kind"), NAMED)
def test_an_entry_names_the_authority_it_has(table, name, language, kind):
    entry = find_name(name, language).entry

    assert "from memory" not in entry.source.split(";")[0]


def test_at_least_two_handbooks_are_replayed():
    assert set(TABLES) >= HANDBOOKS
    assert len([row for row in NAMED if row[0] in HANDBOOKS]) > 90


def test_no_kind_holds_every_stop():
    kinds = {kind for _, _, _, kind in NAMED}

    for kind in kinds:
        assert not all(is_of_kind(entry, kind) for entry in entries())
