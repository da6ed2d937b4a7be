"""Organs to read: the list, one organ, a new one from a pasted stop list."""

from dataclasses import replace

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.text import slugify
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from instruments import heard
from instruments.actions import save_organ
from instruments.breakchart import break_chart
from instruments.forms import PasteForm
from instruments.jamb import panels, piston_words
from instruments.organ import COUPLING_WORDS, Division, Organ, coupler_words
from instruments.organfile import organ_text
from instruments.pipework import stop_compass
from instruments.queries import load_organ, organ_lines
from instruments.stoplist import Reading, StoplistError, read_stoplist
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


@require_GET
@allow(Role.DIRECTOR)
def new_organ(request: HttpRequest) -> HttpResponse:
    return page(request, "instruments/paste.html", {"room": "organs", "form": PasteForm()})


@require_POST
@allow(Role.DIRECTOR)
def read_organ(request: HttpRequest) -> HttpResponse:
    """Show what is understood of a stop list; nothing is kept."""
    form = PasteForm(request.POST)
    reading = _reading(form)
    context = {"room": "organs", "form": form, **_preview(reading)}
    status = 200 if reading else 422
    return page(request, "instruments/paste.html", context, part="reading", status=status)


@require_POST
@allow(Role.DIRECTOR)
def keep_organ(request: HttpRequest) -> HttpResponse:
    form = PasteForm(request.POST)
    reading = _reading(form)
    if reading is None:
        return page(request, "instruments/paste.html", {"room": "organs", "form": form}, status=422)
    name = form.cleaned_data["name"].strip()
    organ = replace(reading.organ, name=name) if name else reading.organ
    row = save_organ(organ)
    messages.success(request, f"{row} is saved. Look through its stops once before relying on it.")
    return redirect(row)


def _reading(form: PasteForm) -> Reading | None:
    if not form.is_valid():
        return None
    try:
        return read_stoplist(form.cleaned_data["text"])
    except StoplistError as error:
        form.add_error("text", str(error))
        return None


def _preview(reading: Reading | None) -> dict[str, object]:
    if reading is None:
        return {}
    return {
        "reading": reading,
        "stops": sum(1 for _ in reading.organ.stops()),
        "unread": {one.line for one in reading.unread},
    }
