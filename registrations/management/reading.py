from pathlib import Path

from django.core.management.base import CommandError

from instruments.organ import Organ
from instruments.organfile import OrganFileError, parse_organ
from registrations.combination import (
    Combination,
    CombinationFileError,
    Music,
    parse_combination,
)


def read_drawn(organ_file: str, combination_file: str) -> tuple[Organ, Combination, Music]:
    """Read an organ and what is drawn on it from two files, or stop the command with a sentence."""
    try:
        organ = parse_organ(_text(organ_file))
        return (organ, *parse_combination(_text(combination_file), organ))
    except (OrganFileError, CombinationFileError) as error:
        raise CommandError(str(error)) from error


def _text(name: str) -> str:
    try:
        return Path(name).read_text(encoding="utf-8-sig")
    except OSError as error:
        raise CommandError(f"{name} cannot be read: {error.strerror}.") from error
    except UnicodeDecodeError as error:
        raise CommandError(f"{name} is not a text file in UTF-8.") from error
