"""Before a part of an organ is removed: what in the registrations uses it."""

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_GET

from config.access import Role, allow
from config.pages import page
from instruments.models import Stop
from instruments.queries import find_part, hindrance
from registrations.queries import uses_of


@require_GET
@allow(Role.DIRECTOR)
def removing(request: HttpRequest, kind: str, pk: int) -> HttpResponse:
    """Ask before a part is removed, and say which changes draw it or are played on it."""
    part = find_part(kind, pk)
    lent = part.instrument.stops.filter(borrowed_from=part.slug) if isinstance(part, Stop) else ()
    context = {
        "room": "organs",
        "part": part,
        "kind": kind,
        "hindrance": hindrance(part),
        "uses": uses_of(part.instrument_id, kind, part.slug),
        "lent": [str(one) for one in lent],
        "reversibles": [str(one) for one in part.instrument.pistons.filter(control=part.slug)],
    }
    return page(request, "registrations/removing.html", context)
