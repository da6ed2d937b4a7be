"""Items: the lines of a service's order."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from services import actions, models
from services.forms import ItemForm


@require_GET
@allow(Role.DIRECTOR)
def new_item(request: HttpRequest, service_pk: int) -> HttpResponse:
    row = get_object_or_404(models.Service, pk=service_pk)
    last = row.items.last()
    first = {"instrument": last.instrument_id, "player": last.player_id} if last else {}
    return _item_form(request, ItemForm(initial=first), row)


@require_POST
@allow(Role.DIRECTOR)
def add_item(request: HttpRequest, service_pk: int) -> HttpResponse:
    row = get_object_or_404(models.Service, pk=service_pk)
    form = ItemForm(request.POST)
    if not form.is_valid():
        return _item_form(request, form, row, status=422)
    actions.add_item(row, form.save(commit=False))
    return redirect(row)


@require_GET
@allow(Role.DIRECTOR)
def item_facts(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Item, pk=pk)
    return _item_form(request, ItemForm(instance=row), row.service)


@require_POST
@allow(Role.DIRECTOR)
def change_item(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Item, pk=pk)
    form = ItemForm(request.POST, instance=row)
    if not form.is_valid():
        return _item_form(request, form, row.service, status=422)
    form.save()
    return redirect(row.service)


@require_POST
@allow(Role.DIRECTOR)
def move_item(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Item, pk=pk)
    actions.move_item(row, -1 if request.POST.get("to") == "earlier" else 1)
    return redirect(row.service)


@require_POST
@allow(Role.DIRECTOR)
def remove_item(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Item, pk=pk)
    row.delete()
    messages.success(request, f"“{row}” was removed from the order.")
    return redirect(row.service)


def _item_form(
    request: HttpRequest, form: ItemForm, service: models.Service, status: int = 200
) -> HttpResponse:
    row = form.instance
    known = row.pk is not None
    context = {
        "room": "week",
        "form": form,
        "title": "Change this item" if known else "An item for the order",
        "over": str(service),
        "action": (
            reverse("change_item", args=[row.pk])
            if known
            else reverse("add_item", args=[service.pk])
        ),
        "back": service.get_absolute_url(),
        "remove": reverse("remove_item", args=[row.pk]) if known else "",
        "remove_label": "Remove this item and its registration",
    }
    return page(request, "services/item_form.html", context, status=status)
