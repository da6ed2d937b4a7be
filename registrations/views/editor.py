"""The editor: one change of a registration, what is drawn in it and what the checks say."""

from urllib.parse import urlencode

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.views.decorators.http import require_GET, require_POST

from config.access import PLAYERS, Role, allow, role_of
from config.pages import page
from registrations import actions, models
from registrations.acceptance import fingerprint
from registrations.board import board, labels
from registrations.checks.remedies import remedies
from registrations.checks.scene import Scene
from registrations.checks.sequences import stop_not_on_organ
from registrations.forms import AcceptanceForm, ChangeForm, CueForm
from registrations.queries import ChangeAt, load_change
from registrations.registration import Moves, moves
from registrations.review import findings_at, findings_of
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


@require_GET
@allow(*PLAYERS)
def ways_out(request: HttpRequest, pk: int) -> HttpResponse:
    """Show the findings with their remedies, for which a tap does not wait."""
    return _editor(request, pk, part="findings")


def _editor(
    request: HttpRequest,
    pk: int,
    form: ChangeForm | None = None,
    refused: AcceptanceForm | None = None,
    status: int = 200,
    part: str = "editor",
) -> HttpResponse:
    at = load_change(pk)
    organ, combination = at.registration.organ, at.value.combination
    may_move = role_of(request.user) is Role.DIRECTOR
    # What was refused stays on the page as it was typed, so nothing may come behind it.
    asked = part == "editor" and refused is None and bool(getattr(request, "htmx", False))
    later = may_move and asked
    said = _said(at, refused, may_move=may_move and not later)
    context = {
        "room": "week",
        "at": at,
        "groups": board(organ, combination),
        "findings": [one for one in said if one["acceptance"] is None],
        "accepted": [one for one in said if one["acceptance"] is not None],
        "undo": _undo(request, at),
        "ask_later": later and any(one["acceptance"] is None for one in said),
        "query": request.GET.urlencode(),
        "labels": labels(organ),
        "moves": None if at.before is None else moves(at.before.combination, at.value.combination),
        "form": form or ChangeForm(organ, instance=at.row),
        "cue_form": CueForm(),
    }
    return page(request, "registrations/editor.html", context, part=part, status=status)


def _said(
    at: ChangeAt, refused: AcceptanceForm | None, *, may_move: bool
) -> list[dict[str, object]]:
    """Give each finding with its remedies, and its acceptance or the form to accept it with.

    What is said of how changes follow one another has no remedy; nor are any looked for, which
    takes longer than all else, for those who may not move anything.
    """
    organ, combination, music = at.registration.organ, at.value.combination, at.value.music
    found = findings_of(organ, combination, music)
    ways_out = remedies(Scene(organ, combination, music), found) if may_move else {}
    meant = {one.fingerprint: one for one in at.acceptances}
    refusals = {} if refused is None else {refused.data["fingerprint"]: refused}
    return [
        {
            "finding": finding,
            "fingerprint": print_of,
            "remedies": ways_out.get(finding, ())[:MOST_REMEDIES],
            "lost": finding.evidence.stops if finding.rule == stop_not_on_organ.NAME else (),
            "acceptance": meant.get(print_of),
            "form": refusals.get(print_of) or AcceptanceForm(auto_id=f"%s-{print_of}"),
        }
        for finding in findings_at(at.registration, at.number - 1)
        for print_of in (fingerprint(finding),)
    ]


def _undo(request: HttpRequest, at: ChangeAt) -> Moves | None:
    """Give the move that takes the last one back, which the address carries; None if it cannot."""
    draw, put_in = (frozenset(request.GET.getlist(name)) for name in ("draw", "put_in"))
    drawn = at.value.combination.drawn
    possible = draw <= at.registration.organ.control_ids() - drawn and put_in <= drawn
    return Moves(draw, put_in) if possible and (draw or put_in) else None


def _after(row: models.Change, back: Moves, anchor: str = "") -> HttpResponse:
    """Go to the page of a change, which offers to take ``back`` what was moved."""
    query = urlencode({"draw": sorted(back.draw), "put_in": sorted(back.put_in)}, doseq=True)
    return redirect(f"{row.get_absolute_url()}{'?' if query else ''}{query}{anchor}")


@require_POST
@allow(Role.DIRECTOR)
def draw_stop(request: HttpRequest, pk: int) -> HttpResponse:
    """Draw the control that was tapped, or put it in when it is drawn."""
    row = get_object_or_404(models.Change, pk=pk)
    control = request.POST.get("control", "")
    one = frozenset([control])
    back = Moves()
    if row.drawn.filter(control=control).exists():
        back = Moves(draw=one)
        actions.move_controls(row, frozenset(), one)
    elif control in load_change(pk).registration.organ.control_ids():
        back = Moves(put_in=one)
        actions.move_controls(row, one, frozenset())
    else:
        messages.error(
            request, "That control is no longer on this organ; the page is up to date now."
        )
    return _after(row, back, f"#control-{control}")


@require_POST
@allow(Role.DIRECTOR)
def take_remedy(request: HttpRequest, pk: int) -> HttpResponse:
    """Make the moves of a remedy, or those that take the last move back."""
    at = load_change(pk)
    draw = frozenset(request.POST.getlist("draw")) & at.registration.organ.control_ids()
    put_in = frozenset(request.POST.getlist("put_in"))
    actions.move_controls(at.row, draw, put_in)
    if "undo" in request.POST:
        return redirect(at.row)
    before = at.value.combination
    return _after(at.row, moves(before.moved(draw, put_in), before))


@require_POST
@allow(Role.DIRECTOR)
def accept_finding(request: HttpRequest, pk: int) -> HttpResponse:
    """Keep that a finding is meant, and why."""
    at = load_change(pk)
    findings = findings_at(at.registration, at.number - 1)
    named = request.POST.get("fingerprint", "")
    finding = next((one for one in findings if fingerprint(one) == named), None)
    if finding is None:
        messages.error(request, "That finding is no longer made; the page is up to date now.")
        return redirect(at.row)
    form = AcceptanceForm(request.POST, auto_id=f"%s-{named}")
    if not form.is_valid():
        return _editor(request, pk, refused=form, status=422)
    person = getattr(request.user, "person", None)
    at.row.accept(finding.rule, named, form.cleaned_data["reason"], person)
    return redirect(at.row)


@require_POST
@allow(Role.DIRECTOR)
def take_acceptance_back(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(models.Change, pk=pk)
    row.take_acceptance_back(request.POST.get("fingerprint", ""))
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
