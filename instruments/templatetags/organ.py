from fractions import Fraction

from django import template
from django.utils.html import format_html, format_html_join
from django.utils.safestring import SafeString

from instruments import mixtures, models
from instruments.breakchart import BreakChart, chart_svg
from instruments.compass import Compass, compass_name, key_typeset
from instruments.figures import roman, stop_figure, stop_name
from instruments.heard import Note
from instruments.organ import Coupler, Stop
from instruments.pitch import is_octave, length_typeset, parse_length, rank_line

register = template.Library()


@register.filter
def figure(stop: Stop) -> str:
    return stop_figure(stop) or "–"


@register.filter
def row_figure(row: models.Stop) -> str:
    return length_typeset(parse_length(row.length)) if row.length else roman(row.ranks)


@register.filter
def name(stop: Stop) -> str:
    return stop_name(stop)


@register.filter
def coupler_pitch(coupler: Coupler) -> str:
    return "off" if coupler.unison_off else length_typeset(Fraction(coupler.octave))


@register.filter
def key(number: int) -> str:
    return key_typeset(number)


@register.filter
def compass(value: Compass) -> str:
    return compass_name(value).replace("-", "–").replace("#", "♯")


@register.filter
def composition(stop: Stop) -> str:
    """A compound stop's ranks in counts, with the keys at which it breaks."""
    zones = [
        f"{mixtures.ordinals_label(zone.lengths)}"
        + ("" if number == 0 and zone.start <= 0 else f" from {key_typeset(zone.start)}")
        for number, zone in enumerate(stop.composition)
    ]
    return ", ".join(zones)


@register.filter
def in_cents(note: Note) -> str:
    """How far a note lies from its key, in whole cents and in words; nothing when it is there."""
    cents = round(note.cents)
    if cents == 0:
        return ""
    return f"{abs(cents)} cents {'sharp' if cents > 0 else 'flat'}"


@register.filter
def ranks_drawn(lengths: tuple[Fraction, ...]) -> SafeString:
    """The picture of a stop: a line a rank, as long as the pipe; hollow where off the unison."""
    if not lengths:
        return SafeString("")
    thick = 6 if len(lengths) == 1 else max(1.5, 16 / len(lengths) - 1)
    lines = (
        (
            "" if is_octave(length) else "off",
            round(at * 18 / len(lengths) + 9 / len(lengths) - thick / 2, 2),
            rank_line(length),
            thick,
        )
        for at, length in enumerate(lengths)
    )
    bars = format_html_join(
        "", '<rect class="{}" x="0" y="{}" width="{}" height="{}" rx="0.5"/>', lines
    )
    picture = '<svg class="rank-line" viewBox="0 0 100 18" preserveAspectRatio="none" {}>{}</svg>'
    return format_html(picture, SafeString('aria-hidden="true"'), bars)


@register.filter
def breaks_drawn(chart: BreakChart) -> SafeString:
    """The picture of a compound stop, whose every text is escaped where it is written."""
    return SafeString(chart_svg(chart))


@register.filter
def feet(length: Fraction) -> str:
    return length_typeset(length)


@register.filter
def list_of(division: models.Division, kind: str) -> str:
    """The id of the list of a division's parts of one kind."""
    return f"{kind}-of-{division.pk}"
