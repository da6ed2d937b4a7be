from collections.abc import Mapping

from django import template

from registrations.checks.findings import LEVEL_WORDS, Level

register = template.Library()


@register.filter
def named(control: str, labels: Mapping[str, str]) -> str:
    """The name of a control by its id; the id itself when the organ no longer has it."""
    return labels.get(control, control)


@register.filter
def level_words(level: Level) -> str:
    return LEVEL_WORDS[level]
