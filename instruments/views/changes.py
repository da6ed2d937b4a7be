"""Organs to change: the list of parts, the organ as a whole, keyboards and divisions."""

from django.db.models import Prefetch
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from instruments import models
from instruments.actions import parts
from instruments.forms.parts import DivisionForm, InstrumentForm, KeyboardForm
from instruments.organ import COUPLING_WORDS, Coupling
from instruments.views.answers import changed, form_page


@require_GET
@allow(Role.DIRECTOR)
def instrument_parts(request: HttpRequest, pk: int) -> HttpResponse:
    """Show all parts of an organ, in nine queries."""
    row = get_object_or_404(
        models.Instrument.objects.prefetch_related(
            Prefetch("keyboards", models.Keyboard.objects.from_the_top()),
            Prefetch("divisions", models.Division.objects.select_related("keyboard")),
            "divisions__stops",
            "divisions__tremulants",
            "couplers",
            Prefetch("pistons", models.Piston.objects.select_related("division")),
            "places",
        ),
        pk=pk,
    )
    context = {
        "room": "organs",
        "instrument": row,
        "coupling": COUPLING_WORDS[Coupling(row.coupling)],
        "untold": [one for one in row.keyboards.all() if one.from_top is None],
        "controls": _controls(row),
    }
    return page(request, "instruments/parts.html", context)


def _controls(row: models.Instrument) -> int:
    kept = [len(one.stops.all()) + len(one.tremulants.all()) for one in row.divisions.all()]
    return sum(kept) + len(row.couplers.all())


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
        return _instrument_form(request, row, form)
    parts.change_facts(form.save(commit=False), InstrumentForm.Meta.fields)
    return redirect("instrument_parts", pk=pk)


def _instrument_form(
    request: HttpRequest, row: models.Instrument, form: InstrumentForm
) -> HttpResponse:
    action = reverse("change_instrument", args=[row.pk])
    return form_page(request, row, form, "The organ as a whole", action)


@require_GET
@allow(Role.DIRECTOR)
def new_keyboard(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _new_keyboard(request, row, KeyboardForm())


@require_POST
@allow(Role.DIRECTOR)
def add_keyboard(request: HttpRequest, pk: int) -> HttpResponse:
    row, form = get_object_or_404(models.Instrument, pk=pk), KeyboardForm(request.POST)
    if not form.is_valid():
        return _new_keyboard(request, row, form)
    parts.add_part(row, form.save(commit=False))
    return changed(form.instance)


def _new_keyboard(request: HttpRequest, row: models.Instrument, form: KeyboardForm) -> HttpResponse:
    return form_page(request, row, form, "A keyboard", reverse("add_keyboard", args=[row.pk]))


@require_GET
@allow(Role.DIRECTOR)
def keyboard_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Keyboard, pk=pk)
    return _keyboard_form(request, KeyboardForm(instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_keyboard(request: HttpRequest, pk: int) -> HttpResponse:
    form = KeyboardForm(request.POST, instance=get_object_or_404(models.Keyboard, pk=pk))
    if not form.is_valid():
        return _keyboard_form(request, form)
    parts.change_row(form.save(commit=False))
    return changed(form.instance)


def _keyboard_form(request: HttpRequest, form: KeyboardForm) -> HttpResponse:
    row = form.instance
    action = reverse("change_keyboard", args=[row.pk])
    return form_page(request, row.instrument, form, f"The {row.name} keyboard", action)


@require_GET
@allow(Role.DIRECTOR)
def new_division(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    return _new_division(request, row, DivisionForm(row))


@require_POST
@allow(Role.DIRECTOR)
def add_division(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Instrument, pk=pk)
    form = DivisionForm(row, request.POST)
    if not form.is_valid():
        return _new_division(request, row, form)
    parts.add_part(row, form.save(commit=False))
    return changed(form.instance)


def _new_division(request: HttpRequest, row: models.Instrument, form: DivisionForm) -> HttpResponse:
    return form_page(request, row, form, "A division", reverse("add_division", args=[row.pk]))


@require_GET
@allow(Role.DIRECTOR)
def division_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Division, pk=pk)
    return _division_form(request, DivisionForm(row.instrument, instance=row))


@require_POST
@allow(Role.DIRECTOR)
def change_division(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Division, pk=pk)
    form = DivisionForm(row.instrument, request.POST, instance=row)
    if not form.is_valid():
        return _division_form(request, form)
    parts.change_row(form.save(commit=False))
    return changed(form.instance)


def _division_form(request: HttpRequest, form: DivisionForm) -> HttpResponse:
    row = form.instance
    action = reverse("change_division", args=[row.pk])
    return form_page(request, row.instrument, form, f"The {row.name}", action)
