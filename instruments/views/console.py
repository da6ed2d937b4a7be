"""The console of an organ: its memory, its pistons, and where each control stands."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from instruments import models
from instruments.actions import parts
from instruments.forms.console import ConsoleForm, PistonForm, PlacesForm
from instruments.jamb import panels, unplaced, usual_places
from instruments.queries import load_organ
from instruments.views.answers import changed, form_page, parts_page


@require_GET
@allow(Role.DIRECTOR)
def console_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _console_form(request, row, ConsoleForm(instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_console(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = ConsoleForm(request.POST, instance=row)
    if not form.is_valid():
        return _console_form(request, row, form)
    parts.change_facts(form.save(commit=False), ConsoleForm.Meta.fields)
    return parts_page(pk, "pistons")


def _console_form(request: HttpRequest, row: models.Instrument, form: ConsoleForm) -> HttpResponse:
    action = reverse("change_console", args=[row.pk])
    return form_page(request, row, form, "Memory and sequencer", action)


@require_GET
@allow(Role.DIRECTOR)
def new_piston(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _new_piston(request, row, PistonForm(load_organ(pk), row))


@require_POST
@allow(Role.DIRECTOR)
def add_piston(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = PistonForm(load_organ(pk), row, request.POST)
    if not form.is_valid():
        return _new_piston(request, row, form)
    parts.add_pistons(row, form.save(commit=False), form.cleaned_data["several"])
    return changed(form.instance)


def _new_piston(request: HttpRequest, row: models.Instrument, form: PistonForm) -> HttpResponse:
    return form_page(request, row, form, "A piston", reverse("add_piston", args=[row.pk]))


@require_GET
@allow(Role.DIRECTOR)
def piston_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Piston, pk=pk)
    organ = load_organ(row.instrument_id)
    return _piston_form(request, PistonForm(organ, row.instrument, instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_piston(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Piston, pk=pk)
    organ = load_organ(row.instrument_id)
    form = PistonForm(organ, row.instrument, request.POST, instance=row)
    if not form.is_valid():
        return _piston_form(request, form)
    parts.change_row(form.save(commit=False))
    return changed(form.instance)


def _piston_form(request: HttpRequest, form: PistonForm) -> HttpResponse:
    row = form.instance
    action = reverse("change_piston", args=[row.pk])
    return form_page(request, row.instrument, form, f"Piston {row}", action)


@require_GET
@allow(Role.DIRECTOR)
def jamb(request: HttpRequest, pk: int) -> HttpResponse:
    """Show where each control stands, as a map and as fields to fill in."""
    return _jamb_page(request, pk, None)


@require_POST
@allow(Role.DIRECTOR)
def place_controls(request: HttpRequest, pk: int) -> HttpResponse:
    """Keep where the controls stand; 422 where two stand in one place."""
    row, form = (
        get_object_or_404(models.Instrument, pk=pk),
        PlacesForm(load_organ(pk), request.POST),
    )
    if not form.is_valid():
        return _jamb_page(request, pk, form)
    parts.set_places(row, form.places())
    messages.success(request, "Saved: where the controls stand.")
    return redirect("jamb", pk=pk)


@require_POST
@allow(Role.DIRECTOR)
def place_as_usual(request: HttpRequest, pk: int) -> HttpResponse:
    """Place all controls as they often stand; only where none has a place yet."""
    row, organ = get_object_or_404(models.Instrument, pk=pk), load_organ(pk)
    if organ.console.places:
        messages.error(request, "Some controls have a place already. Nothing was changed.")
    else:
        parts.set_places(row, usual_places(organ))
        messages.success(request, "A usual order, for you to set right by what you see there.")
    return redirect("jamb", pk=pk)


def _jamb_page(request: HttpRequest, pk: int, form: PlacesForm | None) -> HttpResponse:
    organ = load_organ(pk)
    context = {
        "room": "organs",
        "pk": pk,
        "organ": organ,
        "panels": panels(organ, spare=1),
        "unplaced": unplaced(organ),
        "form": form or PlacesForm(organ),
    }
    status = 422 if form else 200
    return page(request, "instruments/jamb.html", context, status=status)
