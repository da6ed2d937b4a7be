from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import ProtectedError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from services import actions, models
from services.forms import ItemForm, PersonForm, PieceForm, ServiceForm
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


@require_GET
@allow(*PLAYERS)
def pieces(request: HttpRequest) -> HttpResponse:
    words = request.GET.get("words", "").strip()
    found = models.Piece.objects.found_by(words)
    context = {
        "room": "pieces",
        "words": words,
        "found": Paginator(found, 100).get_page(request.GET.get("page")),
    }
    return page(request, "services/pieces.html", context, part="found")


@require_GET
@allow(Role.DIRECTOR)
def new_piece(request: HttpRequest) -> HttpResponse:
    return _piece_form(request, PieceForm())


@require_POST
@allow(Role.DIRECTOR)
def add_piece(request: HttpRequest) -> HttpResponse:
    form = PieceForm(request.POST)
    if not form.is_valid():
        return _piece_form(request, form, status=422)
    messages.success(request, f"“{form.save()}” is in the library.")
    return redirect("pieces")


@require_GET
@allow(Role.DIRECTOR)
def piece_facts(request: HttpRequest, pk: int) -> HttpResponse:
    return _piece_form(request, PieceForm(instance=get_object_or_404(models.Piece, pk=pk)))


@require_POST
@allow(Role.DIRECTOR)
def change_piece(request: HttpRequest, pk: int) -> HttpResponse:
    form = PieceForm(request.POST, instance=get_object_or_404(models.Piece, pk=pk))
    if not form.is_valid():
        return _piece_form(request, form, status=422)
    messages.success(request, f"“{form.save()}” is changed.")
    return redirect("pieces")


@require_POST
@allow(Role.DIRECTOR)
def remove_piece(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Piece, pk=pk)
    try:
        row.delete()
    except ProtectedError:
        messages.error(request, f"“{row}” stands in a service and stays: take it out there first.")
    else:
        messages.success(request, f"“{row}” was removed from the library.")
    return redirect("pieces")


def _piece_form(request: HttpRequest, form: PieceForm, status: int = 200) -> HttpResponse:
    row = form.instance
    known = row.pk is not None
    context = {
        "room": "pieces",
        "form": form,
        "title": "Change this piece" if known else "A piece for the library",
        "action": reverse("change_piece", args=[row.pk]) if known else reverse("add_piece"),
        "back": reverse("pieces"),
        "remove": reverse("remove_piece", args=[row.pk]) if known else "",
        "remove_label": "Remove this piece",
    }
    return page(request, "form.html", context, status=status)


@require_GET
@allow(Role.DIRECTOR)
def people(request: HttpRequest) -> HttpResponse:
    return _people(request, PersonForm())


@require_POST
@allow(Role.DIRECTOR)
def add_person(request: HttpRequest) -> HttpResponse:
    form = PersonForm(request.POST)
    if not form.is_valid():
        return _people(request, form, status=422)
    actions.add_person(form.save(commit=False))
    return redirect("people")


@require_POST
@allow(Role.DIRECTOR)
def make_sign_in_link(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Person, pk=pk, user__isnull=False)
    link = request.build_absolute_uri(actions.sign_in_path(row.user))
    return _people(request, PersonForm(), link=link, invited=row)


def _people(
    request: HttpRequest, form: PersonForm, status: int = 200, **more: object
) -> HttpResponse:
    context = {"room": "people", "people": models.Person.objects.all(), "form": form, **more}
    return page(request, "services/people.html", context, status=status)
