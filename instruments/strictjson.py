"""Strict JSON: a text that says everything once, in numbers that are numbers."""

import json
from typing import Any


class JSONTextError(ValueError):
    """Text that is not JSON, or not only one thing; the message is a sentence for the reader."""


def read_json(text: str) -> object:
    """Read JSON; a byte order mark before it, as some editors write, is passed over.

    Raises:
        JSONTextError: it is not JSON, names one thing twice, or holds NaN or an infinity.
    """
    try:
        return json.loads(
            text.removeprefix("\ufeff"), parse_constant=_refuse, object_pairs_hook=_only_once
        )
    except json.JSONDecodeError as error:
        message = f"This is not JSON: line {error.lineno}, column {error.colno}: {error.msg}."
        raise JSONTextError(message) from error
    except RecursionError as error:
        raise JSONTextError("This JSON is nested too deep to read.") from error
    except ValueError as error:
        raise JSONTextError(f"This JSON cannot be used: {error}.") from error


def _refuse(constant: str) -> None:
    raise ValueError(f"{constant} is not a number")


def _only_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    data = dict(pairs)
    if len(data) < len(pairs):
        names = [name for name, _ in pairs]
        twice = next(name for name in names if names.count(name) > 1)
        raise ValueError(f"“{twice}” is given twice in one place")
    return data
