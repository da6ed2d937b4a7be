"""The organs of the house together: one more from its file, one less, all their stops."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from instruments import models
from instruments.actions import save_organ
from instruments.actions.parts import StillUsedError, remove_organ
from instruments.forms.files import OrganFileForm
from instruments.forms.parts import FindStopsForm
from instruments.queries import house_stops


@require_GET
@allow(Role.DIRECTOR)
def new_organ_file(request: HttpRequest) -> HttpResponse:
    return _file_form(request, OrganFileForm())


@require_POST
@allow(Role.DIRECTOR)
def keep_organ_file(request: HttpRequest) -> HttpResponse:
    """Store the organ of an organ file as a new one."""
    form = OrganFileForm(request.POST, request.FILES)
    if not form.is_valid():
        return _file_form(request, form)
    row = save_organ(form.cleaned_data["file"])
    messages.success(request, f"{row} is saved, as its file has it.")
    return redirect(row)


def _file_form(request: HttpRequest, form: forms.Form) -> HttpResponse:
    context = {
        "room": "organs",
        "form": form,
        "title": "A new organ, from its organ file",
        "action": reverse("keep_organ_file"),
        "back": reverse("organs"),
    }
    return page(request, "form.html", context, status=422 if form.is_bound else 200)


@require_GET
@allow(Role.DIRECTOR)
def leaving_organ(request: HttpRequest, pk: int) -> HttpResponse:
    """Ask before an organ is removed."""
    row = get_object_or_404(models.Instrument, pk=pk)
    context = {"room": "organs", "instrument": row, "stops": row.stops.count()}
    return page(request, "instruments/leaving_organ.html", context)


@require_POST
@allow(Role.DIRECTOR)
def remove_instrument(request: HttpRequest, pk: int) -> HttpResponse:
    """Remove an organ; one that services or registrations use is kept, in words."""
    row = get_object_or_404(models.Instrument, pk=pk)
    try:
        remove_organ(row)
    except StillUsedError as error:
        messages.error(request, str(error))
        return redirect("instrument_parts", pk=pk)
    messages.success(request, f"{row} was removed.")
    return redirect("organs")


@require_GET
@allow(*PLAYERS)
def every_stop(request: HttpRequest) -> HttpResponse:
    """Show the stops of all organs that answer to what is asked; all of them where nothing is."""
    form = FindStopsForm(request.GET)
    wanted = form.cleaned_data if form.is_valid() else None
    context = {
        "room": "organs",
        "form": form,
        "found": house_stops(**wanted) if wanted is not None else (),
        "asked": wanted,
    }
    status = 200 if wanted is not None else 422
    return page(request, "instruments/every_stop.html", context, part="found", status=status)
