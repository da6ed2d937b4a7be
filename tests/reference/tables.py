"""The published tables: text files with their authority on top and one row a line."""

from pathlib import Path

import pytest


def rows(name: str) -> list[tuple[str, ...]]:
    """Give the rows of a table, cells split at ``|``; lines that begin with # are its authority."""
    lines = Path(__file__).with_name(name).read_text(encoding="utf-8").splitlines()
    found = [
        tuple(cell.strip() for cell in line.split("|"))
        for line in lines
        if line.strip() and not line.startswith("#")
    ]
    assert found, f"{name} has no rows"
    return found


def replay(columns: str, name: str):
    """Parametrize a test with the rows of a table, each called by its first cell."""
    table = rows(name)
    return pytest.mark.parametrize(columns.split(), table, ids=[row[0] for row in table])
