"""How long the lexicon takes to load and to find names; run with ``--benchmark-only``."""

from instruments.lexicon import entries, find_name


def test_the_lexicon_is_loaded(benchmark):
    found = benchmark.pedantic(entries, setup=entries.cache_clear, rounds=20, iterations=1)

    assert len(found) > 600


def test_three_hundred_misspelt_names_are_looked_for(benchmark):
    names = [f"{entry.name} Xy" for entry in entries()[:300]]

    def look() -> list[object]:
        return [find_name(name) for name in names]

    found = benchmark.pedantic(look, setup=find_name.cache_clear, rounds=20, iterations=1)

    assert any(found)
