"""What the pages that change an organ answer with: its list of parts, or a form."""

from django import forms
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.urls import reverse

from config.pages import page
from instruments import models


def parts_page(pk: int, fragment: str = "") -> HttpResponseRedirect:
    """Lead back to the list of an organ's parts, to the place that was changed."""
    address = reverse("instrument_parts", args=[pk])
    return HttpResponseRedirect(f"{address}#{fragment}" if fragment else address)


def part_id(row: models.Row) -> str:
    """Give the id that a part has on the page of parts."""
    return f"{type(row)._meta.model_name}-{row.pk}"


def changed(row: models.Row) -> HttpResponseRedirect:
    """Lead back to a part among the others."""
    return parts_page(row.instrument_id, part_id(row))


def form_page(
    request: HttpRequest,
    row: models.Instrument,
    form: forms.BaseForm,
    title: str,
    action: str,
) -> HttpResponse:
    """Show a form; 422 where it was filled in and refused."""
    context = {
        "room": "organs",
        "form": form,
        "title": title,
        "over": row.name,
        "action": action,
        "back": reverse("instrument_parts", args=[row.pk]),
    }
    status = 422 if form.is_bound else 200
    return page(request, "form.html", context, status=status)
