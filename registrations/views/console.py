"""The console page: one step of a service at a time, with nothing on it that can be changed."""

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from config.access import PLAYERS, allow
from config.pages import page
from registrations.console import steps
from registrations.queries import registrations_of
from services.queries import load_service


@require_GET
@allow(*PLAYERS)
def console(request: HttpRequest, pk: int, step: int) -> HttpResponse:
    service = load_service(pk)
    all_steps = steps(service, registrations_of(item.id for item in service.items))
    if all_steps and not 1 <= step <= len(all_steps):
        raise Http404
    context = {
        "room": "week",
        "service": service,
        "step": all_steps[step - 1] if all_steps else None,
        "number": step,
        "count": len(all_steps),
        "back": step - 1,
        "ahead": all_steps[step] if step < len(all_steps) else None,
        "forward": step + 1,
    }
    return page(request, "registrations/console.html", context, part="at-console")
