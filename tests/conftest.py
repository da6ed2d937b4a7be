"""What every test stands on."""

import os

import pytest
from hypothesis import settings

pytest_plugins = ["tests.clients"]

CI = os.environ.get("CI", "").lower() in {"1", "true", "yes"}

settings.register_profile("here", max_examples=50, deadline=None)
settings.register_profile("ci", max_examples=100, deadline=None, derandomize=True, print_blob=True)
settings.load_profile("ci" if CI else "here")


class Skips:
    """Keeps the tests that were skipped, for CI, where each of them fails the run."""

    def __init__(self):
        self.reasons = {}

    def pytest_runtest_logreport(self, report):
        # An expected failure is reported as skipped.
        if report.skipped and not hasattr(report, "wasxfail"):
            self.reasons[report.nodeid] = report.longrepr[-1]

    def pytest_collectreport(self, report):
        if report.skipped:
            self.reasons[report.nodeid] = report.longrepr[-1]

    @pytest.hookimpl(trylast=True)
    def pytest_sessionfinish(self, session):
        if self.reasons and session.exitstatus == pytest.ExitCode.OK:
            session.exitstatus = pytest.ExitCode.TESTS_FAILED

    def pytest_terminal_summary(self, terminalreporter):
        if self.reasons:
            terminalreporter.section("Skipped, which fails a run in CI", red=True)
        for nodeid, reason in sorted(self.reasons.items()):
            terminalreporter.line(f"{nodeid}: {reason}")


def pytest_configure(config):
    if CI:
        config.pluginmanager.register(Skips(), "skips")


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(config, items):
    """Mark what touches the database, for another one; leave benchmarks to ``--benchmark-only``."""
    for item in items:
        if item.get_closest_marker("django_db") or "db" in item.fixturenames:
            item.add_marker("database")
    timed = [item for item in items if "benchmark" in item.fixturenames]
    if timed and not config.getoption("benchmark_only"):
        config.hook.pytest_deselected(items=timed)
        items[:] = [item for item in items if item not in timed]
