"""The week: its services, their items, and what the checks say of each."""

from datetime import date
from itertools import groupby

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils import timezone
from django.views.decorators.http import require_GET

from config.access import PLAYERS, allow
from config.pages import page
from registrations.acceptance import still_open
from registrations.checks import RULES
from registrations.checks.explained import Explained
from registrations.checks.findings import Level
from registrations.checks.sequence import SEQUENCE_RULES
from registrations.queries import registrations_of
from registrations.registration import Registration
from registrations.review import review, tally
from services.calendar import monday_of, neighbours
from services.order import Item, Service
from services.queries import services_in_week


@require_GET
@allow(*PLAYERS)
def this_week(request: HttpRequest) -> HttpResponse:
    return redirect("week", day=timezone.localdate())


@require_GET
@allow(*PLAYERS)
def week(request: HttpRequest, day: date) -> HttpResponse:
    monday = monday_of(day)
    before, after = neighbours(monday)
    services = services_in_week(monday)
    found = registrations_of(item.id for service in services for item in service.items)
    context = {
        "room": "week",
        "monday": monday,
        "before": before,
        "after": after,
        "today": timezone.localdate(),
        "days": [
            {"day": on, "services": [_service_lines(service, found) for service in together]}
            for on, together in groupby(services, key=lambda service: service.day)
        ],
    }
    return page(request, "registrations/week.html", context)


def _service_lines(service: Service, found: dict[int, Registration]) -> dict[str, object]:
    return {
        "service": service,
        "lines": [_line(item, found.get(item.id)) for item in service.items],
    }


def _line(item: Item, registration: Registration | None) -> dict[str, object]:
    if registration is None:
        return {"item": item, "registration": None}
    count = tally(still_open(registration, review(registration)))
    return {"item": item, "registration": registration, "tally": count}


@require_GET
@allow(*PLAYERS)
def rules(request: HttpRequest) -> HttpResponse:
    every: tuple[Explained, ...] = (*RULES, *SEQUENCE_RULES)
    told = [
        {
            "name": rule.NAME,
            "level": rule.LEVEL,
            "explanation": rule.__doc__,
            "example": rule.EXAMPLE,
            "sources": rule.SOURCES,
        }
        for rule in every
    ]
    context = {"room": "rules", "rules": told, "levels": list(Level)}
    return page(request, "registrations/rules.html", context)
