"""Guide words: what a stop is, in words a learner understands, and why a rule says what it does."""

import re
from functools import cache

from registrations.checks import RULES
from registrations.checks.words import capital

_REASON = re.compile(r"Why it matters:\s+(.+?[.])(?:\s|$)", re.DOTALL)


@cache
def reason_of(rule: str) -> str:
    """Give the first sentence of why a rule matters; StopIteration where there is no such rule."""
    explained = next(one.__doc__ or "" for one in RULES if rule == one.NAME)
    return capital(" ".join(_REASON.findall(explained)[0].split()))
