"""Explained: what every rule's module says of itself, whatever it looks at."""

from typing import Protocol

from registrations.checks.findings import Level, Source, Subject


class Explained(Protocol):
    """A rule's module: its name, level and subject, who says so, and an example.

    The module's docstring names the fault and says why it matters.
    """

    @property
    def NAME(self) -> str: ...  # noqa: D102, N802
    @property
    def LEVEL(self) -> Level: ...  # noqa: D102, N802
    @property
    def SUBJECT(self) -> Subject: ...  # noqa: D102, N802
    @property
    def SOURCES(self) -> tuple[Source, ...]: ...  # noqa: D102, N802
    @property
    def EXAMPLE(self) -> str: ...  # noqa: D102, N802
