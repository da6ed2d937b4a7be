import os
import subprocess
import sys
from pathlib import Path

import pytest
from django.db.backends.sqlite3.base import DatabaseWrapper

HERE = Path(__file__).resolve().parents[2]


def manage(*words: str, **environment: str) -> subprocess.CompletedProcess:
    ours = {"DATABASE_URL", "DJANGO_ALLOW_ASYNC_UNSAFE"}
    kept = {name: value for name, value in os.environ.items() if name not in ours}
    return subprocess.run(
        [sys.executable, "manage.py", *words],
        env={**kept, **environment},
        cwd=HERE,
        capture_output=True,
        text=True,
        timeout=60,
    )


def test_a_served_installation_passes_djangos_own_checks(tmp_path):
    served = {"LOFTBOOK_HTTPS": "yes", "LOFTBOOK_HOSTS": "loft.example"}
    run = manage(
        "check", "--deploy", "--fail-level", "WARNING", LOFTBOOK_VAR=str(tmp_path), **served
    )

    assert run.returncode == 0, run.stderr


@pytest.mark.parametrize("written", ["maybe", "2", "ja"])
def test_a_switch_that_is_neither_yes_nor_no_is_refused(tmp_path, written):
    run = manage("check", LOFTBOOK_VAR=str(tmp_path), LOFTBOOK_HTTPS=written)

    assert run.returncode != 0
    assert f"LOFTBOOK_HTTPS is “{written}”. Write yes or no." in run.stderr


def test_the_secret_key_is_made_once_and_kept_to_its_owner(tmp_path):
    show = ("shell", "-v0", "-c", "from django.conf import settings; print(settings.SECRET_KEY)")
    first = manage(*show, LOFTBOOK_VAR=str(tmp_path)).stdout
    second = manage(*show, LOFTBOOK_VAR=str(tmp_path)).stdout

    assert first == second
    assert len(first.strip()) >= 50
    assert (tmp_path / "secret.key").stat().st_mode & 0o077 == 0


@pytest.mark.parametrize(
    ("pragma", "value"),
    [("journal_mode", "wal"), ("synchronous", 2), ("busy_timeout", 5000), ("foreign_keys", 1)],
)
def test_sqlite_is_set_to_lose_nothing(db, tmp_path, pragma, value):
    from config.settings import SQLITE_OPTIONS

    given = {"NAME": str(tmp_path / "x.sqlite3"), "OPTIONS": SQLITE_OPTIONS, "TIME_ZONE": None}
    rest = {"CONN_MAX_AGE": 0, "CONN_HEALTH_CHECKS": False, "AUTOCOMMIT": True}
    connection = DatabaseWrapper({"ENGINE": "django.db.backends.sqlite3", **given, **rest})
    with connection.cursor() as cursor:
        cursor.execute(f"PRAGMA {pragma}")
        read = cursor.fetchone()[0]
    connection.close()

    assert read == value
    assert SQLITE_OPTIONS["transaction_mode"] == "IMMEDIATE"
