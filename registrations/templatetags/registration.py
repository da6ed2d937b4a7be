from collections.abc import Mapping

from django import template
from django.utils.safestring import SafeString

from registrations.checks.findings import LEVEL_WORDS, Level
from registrations.compasschart import CompassChart, compass_svg

register = template.Library()


@register.filter
def named(control: str, labels: Mapping[str, str]) -> str:
    """The name of a control by its id; the id itself when the organ no longer has it."""
    return labels.get(control, control)


@register.filter
def level_words(level: Level) -> str:
    return LEVEL_WORDS[level]


@register.filter
def along(chart: CompassChart) -> SafeString:
    """The picture, whose every text is escaped where it is written."""
    return SafeString(compass_svg(chart))
