"""Services: one with its order, a new one, its date and title."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from services import models
from services.forms import ServiceForm
from services.queries import load_service


@require_GET
@allow(*PLAYERS)
def service(request: HttpRequest, pk: int) -> HttpResponse:
    return page(request, "services/service.html", {"room": "week", "service": load_service(pk)})


@require_GET
@allow(Role.DIRECTOR)
def new_service(request: HttpRequest) -> HttpResponse:
    first = {"day": request.GET.get("day") or timezone.localdate(), "starts": "10:00"}
    return _service_form(request, ServiceForm(initial=first))


@require_POST
@allow(Role.DIRECTOR)
def add_service(request: HttpRequest) -> HttpResponse:
    form = ServiceForm(request.POST)
    if not form.is_valid():
        return _service_form(request, form, status=422)
    return redirect(form.save())


@require_GET
@allow(Role.DIRECTOR)
def service_facts(request: HttpRequest, pk: int) -> HttpResponse:
    return _service_form(request, ServiceForm(instance=get_object_or_404(models.Service, pk=pk)))


@require_POST
@allow(Role.DIRECTOR)
def change_service(request: HttpRequest, pk: int) -> HttpResponse:
    form = ServiceForm(request.POST, instance=get_object_or_404(models.Service, pk=pk))
    if not form.is_valid():
        return _service_form(request, form, status=422)
    return redirect(form.save())


@require_POST
@allow(Role.DIRECTOR)
def remove_service(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Service, pk=pk)
    row.delete()
    messages.success(request, f"{row.title} was removed, with its items and registrations.")
    return redirect("week", day=row.day)


def _service_form(request: HttpRequest, form: ServiceForm, status: int = 200) -> HttpResponse:
    row = form.instance
    known = row.pk is not None
    context = {
        "room": "week",
        "form": form,
        "title": "Date, time and title" if known else "A new service",
        "over": str(row) if known else "",
        "action": reverse("change_service", args=[row.pk]) if known else reverse("add_service"),
        "back": row.get_absolute_url() if known else reverse("this_week"),
        "remove": reverse("remove_service", args=[row.pk]) if known else "",
        "remove_label": "Remove this service with all its items",
    }
    return page(request, "form.html", context, status=status)
