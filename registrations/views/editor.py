"""The editor: one change of a registration, what is drawn in it and what the checks say."""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow
from config.pages import page
from registrations import actions, models
from registrations.board import board, labels
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from registrations.forms import ChangeForm, CueForm
from registrations.queries import load_change
from registrations.registration import moves
from registrations.review import findings_of
from services.models import Item

MOST_REMEDIES = 4


@require_GET
@allow(*PLAYERS)
def item_registration(request: HttpRequest, pk: int) -> HttpResponse:
    item = get_object_or_404(Item.objects.select_related("service", "piece", "instrument"), pk=pk)
    first = models.Change.objects.filter(registration__item=item).first()
    if first is not None:
        return redirect(first)
    return page(request, "registrations/none_yet.html", {"room": "week", "item": item})


@require_POST
@allow(Role.DIRECTOR)
def begin_registration(request: HttpRequest, pk: int) -> HttpResponse:
    item = get_object_or_404(Item, pk=pk, instrument__isnull=False)
    return redirect(actions.begin_registration(item))


@require_GET
@allow(*PLAYERS)
def change(request: HttpRequest, pk: int) -> HttpResponse:
    return _editor(request, pk)


def _editor(
    request: HttpRequest, pk: int, form: ChangeForm | None = None, status: int = 200
) -> HttpResponse:
    at = load_change(pk)
    organ, combination = at.registration.organ, at.value.combination
    findings = findings_of(organ, combination, at.value.music)
    ways_out = remedies(Scene(organ, combination, at.value.music), findings)
    context = {
        "room": "week",
        "at": at,
        "groups": board(organ, combination),
        "findings": [
            {"finding": finding, "remedies": ways_out[finding][:MOST_REMEDIES]}
            for finding in findings
        ],
        "labels": labels(organ),
        "lost": sorted(combination.drawn - organ.control_ids()),
        "moves": None if at.before is None else moves(at.before.combination, at.value.combination),
        "form": form or ChangeForm(organ, instance=at.row),
        "cue_form": CueForm(),
    }
    return page(request, "registrations/editor.html", context, part="editor", status=status)


@require_POST
@allow(Role.DIRECTOR)
def draw_stop(request: HttpRequest, pk: int) -> HttpResponse:
    """Draw the control that was tapped, or put it in when it is drawn."""
    row = get_object_or_404(models.Change, pk=pk)
    control = request.POST.get("control", "")
    one = frozenset([control])
    if row.drawn.filter(control=control).exists():
        actions.move_controls(row, frozenset(), one)
    elif control in load_change(pk).registration.organ.control_ids():
        actions.move_controls(row, one, frozenset())
    else:
        messages.error(
            request, "That control is no longer on this organ; the page is up to date now."
        )
    return redirect(f"{row.get_absolute_url()}#control-{control}")


@require_POST
@allow(Role.DIRECTOR)
def take_remedy(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Change, pk=pk)
    known = load_change(pk).registration.organ.control_ids()
    draw = frozenset(request.POST.getlist("draw")) & known
    actions.move_controls(row, draw, frozenset(request.POST.getlist("put_in")))
    return redirect(row)


@require_POST
@allow(Role.DIRECTOR)
def set_change(request: HttpRequest, pk: int) -> HttpResponse:
    """Store the cue, the hands, the texture and the note of a change."""
    at = load_change(pk)
    form = ChangeForm(at.registration.organ, request.POST, instance=at.row)
    if not form.is_valid():
        return _editor(request, pk, form, status=422)
    return redirect(form.save())


@require_POST
@allow(Role.DIRECTOR)
def add_change(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Change, pk=pk)
    form = CueForm(request.POST)
    if not form.is_valid():
        messages.error(request, "Say where the new change is set: a verse, a bar, some words.")
        return redirect(row)
    return redirect(actions.add_change(row, form.cleaned_data["cue"]))


@require_POST
@allow(Role.DIRECTOR)
def move_change(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Change, pk=pk)
    actions.move_change(row, -1 if request.POST.get("to") == "earlier" else 1)
    return redirect(row)


@require_POST
@allow(Role.DIRECTOR)
def remove_change(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Change, pk=pk)
    shown = actions.remove_change(row)
    if shown is None:
        messages.success(request, "The registration is removed.")
        return redirect("item_registration", pk=row.registration.item_id)
    messages.success(request, f"The change at “{row.cue}” is removed.")
    return redirect(shown)
