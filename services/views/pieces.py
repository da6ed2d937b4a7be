"""Pieces: the library."""

from django.contrib import messages
from django.core.paginator import Paginator
from django.db.models import ProtectedError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.urls import reverse
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from services import models
from services.forms import PieceForm


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
