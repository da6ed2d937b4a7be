"""Stops, tremulants and couplers: added and changed."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from instruments import models
from instruments.actions import parts
from instruments.forms.parts import CouplerForm, StopForm, TremulantForm
from instruments.views.answers import changed, form_page, parts_page


@require_GET
@allow(Role.DIRECTOR)
def new_stop(request: HttpRequest, division_pk: int) -> HttpResponse:
    division = get_object_or_404(models.Division, pk=division_pk)
    return _stop_form(request, division, StopForm(division.instrument))


@require_POST
@allow(Role.DIRECTOR)
def add_stop(request: HttpRequest, division_pk: int) -> HttpResponse:
    division = get_object_or_404(models.Division, pk=division_pk)
    form = StopForm(division.instrument, request.POST)
    if not form.is_valid():
        return _stop_form(request, division, form)
    parts.add_control(division, form.save(commit=False))
    return changed(form.instance)


@require_GET
@allow(Role.DIRECTOR)
def stop_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Stop, pk=pk)
    return _stop_form(request, row.division, StopForm(row.instrument, instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_stop(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Stop, pk=pk)
    home = row.division
    form = StopForm(row.instrument, request.POST, instance=row)
    if not form.is_valid():
        return _stop_form(request, home, form)
    parts.change_stop(form.save(commit=False), home)
    return changed(form.instance)


def _stop_form(request: HttpRequest, division: models.Division, form: StopForm) -> HttpResponse:
    row = form.instance
    if row.pk is None:
        title, action = f"A stop for the {division}", reverse("add_stop", args=[division.pk])
    else:
        title, action = f"{row} of the {division}", reverse("change_stop", args=[row.pk])
    return form_page(request, division.instrument, form, title, action)


@require_POST
@allow(Role.DIRECTOR)
def add_tremulant(request: HttpRequest, division_pk: int) -> HttpResponse:
    division = get_object_or_404(models.Division, pk=division_pk)
    form = TremulantForm({"name": request.POST.get("name") or "Tremulant"})
    if not form.is_valid():
        messages.error(request, "A tremulant's name has at most 200 letters.")
        return parts_page(division.instrument_id)
    parts.add_control(division, form.save(commit=False))
    return changed(form.instance)


@require_GET
@allow(Role.DIRECTOR)
def tremulant_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Tremulant, pk=pk)
    return _tremulant_form(request, TremulantForm(instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_tremulant(request: HttpRequest, pk: int) -> HttpResponse:
    form = TremulantForm(request.POST, instance=get_object_or_404(models.Tremulant, pk=pk))
    if not form.is_valid():
        return _tremulant_form(request, form)
    parts.change_row(form.save(commit=False))
    return changed(form.instance)


def _tremulant_form(request: HttpRequest, form: TremulantForm) -> HttpResponse:
    row = form.instance
    action = reverse("change_tremulant", args=[row.pk])
    return form_page(request, row.instrument, form, f"Tremulant of the {row.division}", action)


@require_GET
@allow(Role.DIRECTOR)
def new_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _new_coupler(request, row, CouplerForm(row))


@require_POST
@allow(Role.DIRECTOR)
def add_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = CouplerForm(row, request.POST)
    if not form.is_valid():
        return _new_coupler(request, row, form)
    parts.add_coupler(row, form.save(commit=False))
    return changed(form.instance)


def _new_coupler(request: HttpRequest, row: models.Instrument, form: CouplerForm) -> HttpResponse:
    return form_page(request, row, form, "A coupler", reverse("add_coupler", args=[row.pk]))


@require_GET
@allow(Role.DIRECTOR)
def coupler_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Coupler, pk=pk)
    return _coupler_form(request, CouplerForm(row.instrument, instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_coupler(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Coupler, pk=pk)
    form = CouplerForm(row.instrument, request.POST, instance=row)
    if not form.is_valid():
        return _coupler_form(request, form)
    parts.change_row(form.save(commit=False))
    return changed(form.instance)


def _coupler_form(request: HttpRequest, form: CouplerForm) -> HttpResponse:
    row = form.instance
    action = reverse("change_coupler", args=[row.pk])
    return form_page(request, row.instrument, form, str(row), action)
