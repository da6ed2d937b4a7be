"""The stop guide of an organ: all its stops by division, and each stop by itself."""

from itertools import groupby

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from config.access import PLAYERS, allow
from config.pages import page
from instruments.organ import Organ, Stop
from instruments.queries import load_organ
from registrations.guide import GuideEntry, entry_of, guide
from registrations.guidetext import (
    because,
    breaks_ladder,
    effects,
    ground_words,
    parties,
    stop_ladder,
)
from registrations.guidewords import heard_of, words_of


@require_GET
@allow(*PLAYERS)
def stop_guide(request: HttpRequest, pk: int) -> HttpResponse:
    organ = load_organ(pk)
    context = {
        "room": "organs",
        "pk": pk,
        "organ": organ,
        "divisions": [
            {"division": division, "lines": [_line(organ, entry) for entry in entries]}
            for division, entries in groupby(guide(organ), key=lambda entry: entry.division)
        ],
    }
    return page(request, "registrations/guide.html", context)


def _line(organ: Organ, entry: GuideEntry) -> dict[str, object]:
    return {
        "stop": entry.stop,
        "words": words_of(organ, entry.division, entry.stop),
        "needs": entry.ground.needs,
    }


@require_GET
@allow(*PLAYERS)
def guide_stop(request: HttpRequest, pk: int, stop: str) -> HttpResponse:
    organ = load_organ(pk)
    try:
        entry = entry_of(organ, stop)
    except KeyError as error:
        raise Http404(f"This organ has no stop “{stop}”.") from error
    before, after = _neighbours(organ, entry.stop)
    context = {
        "room": "organs",
        "pk": pk,
        "organ": organ,
        "entry": entry,
        "before": before,
        "after": after,
        **_explained(organ, entry),
    }
    return page(request, "registrations/guide_stop.html", context)


def _explained(organ: Organ, entry: GuideEntry) -> dict[str, object]:
    heard = heard_of(organ, entry.division, entry.stop)
    return {
        "words": words_of(organ, entry.division, entry.stop),
        "heard": heard,
        "ground": ground_words(entry),
        "picture": stop_ladder(organ, entry),
        "breaks": breaks_ladder(heard) if len(heard.zones) > 1 else None,
        "parties": [
            {"party": one, "effects": effects(entry, one) if one.own else ()}
            for one in parties(entry)
        ],
        "avoid": because(entry.avoid),
        "care": because(entry.care),
    }


def _neighbours(organ: Organ, stop: Stop) -> tuple[Stop | None, Stop | None]:
    """Give the stops before and after one in console order."""
    stops: list[Stop | None] = [None, *(one for _, one in organ.stops()), None]
    at = stops.index(stop)
    return stops[at - 1], stops[at + 1]
