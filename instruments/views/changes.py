"""Organs to change: facts, divisions, stops, tremulants, couplers."""

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from instruments import actions, models
from instruments.forms import CouplerForm, DivisionForm, InstrumentForm, StopForm, TremulantForm


@require_GET
@allow(Role.DIRECTOR)
def instrument_parts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(
        models.Instrument.objects.prefetch_related(
            "divisions__stops", "divisions__tremulants", "couplers"
        ),
        pk=pk,
    )
    return page(request, "instruments/parts.html", {"room": "organs", "instrument": row})


@require_GET
@allow(Role.DIRECTOR)
def instrument_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _instrument_form(request, row, InstrumentForm(instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_instrument(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = InstrumentForm(request.POST, instance=row)
    if not form.is_valid():
        return _instrument_form(request, row, form, status=422)
    actions.change_facts(form.save(commit=False), form.changed_data)
    return redirect(row)


def _instrument_form(
    request: HttpRequest, row: models.Instrument, form: InstrumentForm, status: int = 200
) -> HttpResponse:
    action = reverse("change_instrument", args=[row.pk])
    return _form(request, row, form, "The organ as a whole", action, status=status)


@require_GET
@allow(Role.DIRECTOR)
def division_facts(request: HttpRequest, pk: int) -> HttpResponse:
    return _division_form(request, DivisionForm(instance=get_object_or_404(models.Division, pk=pk)))


@require_POST
@allow(Role.DIRECTOR)
def change_division(request: HttpRequest, pk: int) -> HttpResponse:
    form = DivisionForm(request.POST, instance=get_object_or_404(models.Division, pk=pk))
    if not form.is_valid():
        return _division_form(request, form, status=422)
    actions.change_row(form.save(commit=False))
    return redirect("instrument_parts", pk=form.instance.instrument_id)


def _division_form(request: HttpRequest, form: DivisionForm, status: int = 200) -> HttpResponse:
    row = form.instance
    action = reverse("change_division", args=[row.pk])
    return _form(request, row.instrument, form, f"The {row.name}", action, status=status)


@require_GET
@allow(Role.DIRECTOR)
def new_stop(request: HttpRequest, division_pk: int) -> HttpResponse:
    return _stop_form(request, get_object_or_404(models.Division, pk=division_pk), StopForm())


@require_POST
@allow(Role.DIRECTOR)
def add_stop(request: HttpRequest, division_pk: int) -> HttpResponse:
    division = get_object_or_404(models.Division, pk=division_pk)
    form = StopForm(request.POST)
    if not form.is_valid():
        return _stop_form(request, division, form, status=422)
    actions.add_control(division, form.save(commit=False))
    return redirect("instrument_parts", pk=division.instrument_id)


@require_GET
@allow(Role.DIRECTOR)
def stop_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Stop, pk=pk)
    return _stop_form(request, row.division, StopForm(instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_stop(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Stop, pk=pk)
    form = StopForm(request.POST, instance=row)
    if not form.is_valid():
        return _stop_form(request, row.division, form, status=422)
    actions.change_row(form.save(commit=False))
    return redirect("instrument_parts", pk=row.instrument_id)


def _stop_form(
    request: HttpRequest, division: models.Division, form: StopForm, status: int = 200
) -> HttpResponse:
    row = form.instance
    if row.pk is None:
        title, action = f"A stop for the {division}", reverse("add_stop", args=[division.pk])
    else:
        title, action = f"{row} of the {division}", reverse("change_stop", args=[row.pk])
    return _form(request, division.instrument, form, title, action, status=status)


@require_POST
@allow(Role.DIRECTOR)
def move_stop(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Stop, pk=pk)
    actions.move_stop(row, -1 if request.POST.get("to") == "up" else 1)
    return redirect(f"{reverse('instrument_parts', args=[row.instrument_id])}#stop-{row.pk}")


@require_POST
@allow(Role.DIRECTOR)
def remove_stop(request: HttpRequest, pk: int) -> HttpResponse:
    return _remove(request, get_object_or_404(models.Stop, pk=pk))


@require_POST
@allow(Role.DIRECTOR)
def add_tremulant(request: HttpRequest, division_pk: int) -> HttpResponse:
    division = get_object_or_404(models.Division, pk=division_pk)
    form = TremulantForm({"name": request.POST.get("name") or "Tremulant"})
    if form.is_valid():
        actions.add_control(division, form.save(commit=False))
    else:
        messages.error(request, "A tremulant's name has at most 200 letters.")
    return redirect("instrument_parts", pk=division.instrument_id)


@require_POST
@allow(Role.DIRECTOR)
def remove_tremulant(request: HttpRequest, pk: int) -> HttpResponse:
    return _remove(request, get_object_or_404(models.Tremulant, pk=pk))


@require_GET
@allow(Role.DIRECTOR)
def new_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _coupler_form(request, row, CouplerForm(row))


@require_POST
@allow(Role.DIRECTOR)
def add_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = CouplerForm(row, request.POST)
    if not form.is_valid():
        return _coupler_form(request, row, form, status=422)
    actions.add_coupler(row, form.save(commit=False))
    return redirect("instrument_parts", pk=pk)


def _coupler_form(
    request: HttpRequest, row: models.Instrument, form: CouplerForm, status: int = 200
) -> HttpResponse:
    action = reverse("add_coupler", args=[row.pk])
    return _form(request, row, form, "A coupler", action, status=status)


@require_POST
@allow(Role.DIRECTOR)
def remove_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    return _remove(request, get_object_or_404(models.Coupler, pk=pk))


def _remove(
    request: HttpRequest, row: models.Stop | models.Tremulant | models.Coupler
) -> HttpResponse:
    actions.remove_row(row)
    messages.success(request, f"{row} was removed. Registrations that drew it will say so.")
    return redirect("instrument_parts", pk=row.instrument_id)


def _form(
    request: HttpRequest,
    row: models.Instrument,
    form: forms.BaseForm,
    title: str,
    action: str,
    *,
    status: int,
) -> HttpResponse:
    context = {
        "room": "organs",
        "form": form,
        "title": title,
        "over": row.name,
        "action": action,
        "back": reverse("instrument_parts", args=[row.pk]),
    }
    return page(request, "form.html", context, status=status)
