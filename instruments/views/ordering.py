"""Parts of an organ put in order and removed, whatever kind they are of."""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_POST

from config.access import Role, allow
from instruments import models
from instruments.actions import parts
from instruments.queries import find_part, hindrance
from instruments.views.answers import changed, parts_page


@require_POST
@allow(Role.DIRECTOR)
def move_part(request: HttpRequest, kind: str, pk: int) -> HttpResponse:
    """Move a part one place up or down among its own kind."""
    row = find_part(kind, pk)
    parts.move_row(row, -1 if request.POST.get("to") == "up" else 1)
    return changed(row)


@require_POST
@allow(Role.DIRECTOR)
def set_order(request: HttpRequest, pk: int) -> HttpResponse:
    """Order all parts of one kind as their numbers are listed; a list that is not whole is not."""
    try:
        listed = [int(number) for number in request.POST.getlist("part")]
        first = find_part(request.POST.get("kind", ""), listed[0])
    except (ValueError, IndexError) as error:
        raise Http404("The list that was sent has no numbers.") from error
    if first.instrument_id != pk:
        raise Http404("That is a part of another organ.")
    if not parts.set_order(first, listed):
        messages.error(request, "The list has changed meanwhile. Here it is as it is now.")
    return parts_page(pk)


@require_POST
@allow(Role.DIRECTOR)
def remove_part(request: HttpRequest, kind: str, pk: int) -> HttpResponse:
    """Remove a part; a keyboard or division that still has something is kept, in words."""
    row = find_part(kind, pk)
    reason = hindrance(row)
    if reason:
        messages.error(request, f"{row} was not removed. {reason}")
        return changed(row)
    parts.remove_row(row)
    told = "" if isinstance(row, models.Piston) else " Registrations that use it will say so."
    messages.success(request, f"{row} was removed.{told}")
    return parts_page(row.instrument_id)
