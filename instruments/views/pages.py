"""Organs to read: the list, one organ, a new one from a pasted stop list."""

from django.http import HttpRequest, HttpResponse
from django.utils.text import slugify
from django.views.decorators.http import require_GET

from config.access import PLAYERS, allow
from config.pages import page
from instruments import heard
from instruments.breakchart import break_chart
from instruments.jamb import panels, piston_words
from instruments.organ import COUPLING_WORDS, Division, Organ, coupler_words
from instruments.organfile import organ_text
from instruments.pipework import stop_compass
from instruments.queries import load_organ, organ_lines
from instruments.tone import CONSTRUCTION_WORDS


@require_GET
@allow(*PLAYERS)
def organs(request: HttpRequest) -> HttpResponse:
    return page(request, "instruments/organs.html", {"room": "organs", "organs": organ_lines()})


@require_GET
@allow(*PLAYERS)
def instrument(request: HttpRequest, pk: int) -> HttpResponse:
    organ = load_organ(pk)
    context = {
        "room": "organs",
        "pk": pk,
        "organ": organ,
        "divisions": [_division_rows(organ, division) for division in organ.divisions],
        "couplers": [
            {"coupler": one, "words": coupler_words(organ, one)} for one in organ.couplers
        ],
        "count": sum(1 for _ in organ.stops()),
        "coupling": COUPLING_WORDS[organ.coupling],
        "charts": _charts(organ),
        "panels": panels(organ),
        "pistons": [
            {"piston": one, "words": piston_words(organ, one)} for one in organ.console.pistons
        ],
    }
    return page(request, "instruments/organ.html", context)


def _charts(organ: Organ) -> list[dict[str, object]]:
    charts = ((one, break_chart(organ, one, stop)) for one, stop in organ.stops())
    return [{"division": division, "chart": chart} for division, chart in charts if chart]


def _division_rows(organ: Organ, division: Division) -> dict[str, object]:
    rows = []
    for stop in division.stops:
        at = heard.shown_key(stop_compass(organ, division, stop))
        rows.append(
            {
                "stop": stop,
                "construction": CONSTRUCTION_WORDS[stop.construction],
                "key": at,
                "notes": heard.notes(stop, at),
                "lengths": heard.lengths_of(stop, at),
                "compass": stop.compass,
            }
        )
    home = organ.keyboard(division.keyboard) if division.keyboard else None
    return {"division": division, "home": home, "rows": rows}


@require_GET
@allow(*PLAYERS)
def organ_file(request: HttpRequest, pk: int) -> HttpResponse:
    organ = load_organ(pk)
    name = slugify(organ.name) or "organ"
    return HttpResponse(
        organ_text(organ),
        content_type="application/json",
        headers={"Content-Disposition": f'attachment; filename="{name}.json"'},
    )
