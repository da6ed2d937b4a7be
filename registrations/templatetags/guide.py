from django import template
from django.utils.safestring import SafeString

from instruments.mixtures import Zone
from instruments.organ import Stop
from registrations import guidetext
from registrations.charts import Ladder, ladder_svg
from registrations.guide import Companion, GuideEntry
from registrations.guidewords import Heard, heard_words, zone_words

register = template.Library()


@register.filter
def label(stop: Stop) -> str:
    return guidetext.label(stop)


@register.filter
def labels_of(stops: tuple[Stop, ...]) -> str:
    return guidetext.labels(stops)


@register.filter
def companion(one: Companion) -> str:
    return guidetext.companion_words(one)


@register.filter
def party_name(party: guidetext.Party) -> str:
    return guidetext.party_name(party)


@register.filter
def party_words(party: guidetext.Party) -> str:
    return guidetext.party_words(party)


@register.filter
def clashes(said: guidetext.Because, entry: GuideEntry) -> str:
    return guidetext.clashes_words(entry, said)


@register.filter
def heard_sentence(heard: Heard) -> str:
    return heard_words(heard)


@register.filter
def zone(one: Zone) -> str:
    return zone_words(one)


@register.filter
def svg(picture: Ladder) -> SafeString:
    """The picture, whose every text is escaped where it is written."""
    return SafeString(ladder_svg(picture))
