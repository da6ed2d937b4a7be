"""A new organ from its stop list: paste or upload, see how each line is read, mend, save."""

from collections import defaultdict
from dataclasses import dataclass, replace

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from instruments.actions import save_organ
from instruments.forms import PasteForm
from instruments.forms.paste import with_its_text
from instruments.stoplist import Reading, StoplistError, read_stoplist


@dataclass(frozen=True, slots=True)
class ShownLine:
    """A line of the list, how it was read, and what was guessed for it."""

    line: int
    text: str
    read_as: str
    unread: bool
    doubts: tuple[str, ...]


@require_GET
@allow(Role.DIRECTOR)
def new_organ(request: HttpRequest) -> HttpResponse:
    return _paste(request, PasteForm(), None)


@require_POST
@allow(Role.DIRECTOR)
def read_organ(request: HttpRequest) -> HttpResponse:
    """Show what is understood of a stop list; nothing is kept."""
    form, reading = _read(request)
    return _paste(request, form, reading, status=200 if reading else 422)


@require_POST
@allow(Role.DIRECTOR)
def keep_organ(request: HttpRequest) -> HttpResponse:
    form, reading = _read(request)
    if reading is None:
        return _paste(request, form, None, status=422)
    name = form.cleaned_data["name"].strip()
    organ = replace(reading.organ, name=name) if name else reading.organ
    row = save_organ(organ)
    messages.success(request, f"{row} is saved. Look through its stops once before relying on it.")
    return redirect(row)


def _read(request: HttpRequest) -> tuple[PasteForm, Reading | None]:
    form = PasteForm(with_its_text(request.POST, request.FILES), request.FILES)
    if not form.is_valid():
        return form, None
    try:
        return form, read_stoplist(form.cleaned_data["text"])
    except StoplistError as error:
        form.add_error("text", str(error))
        return form, None


def _paste(
    request: HttpRequest, form: PasteForm, reading: Reading | None, status: int = 200
) -> HttpResponse:
    context = {
        "room": "organs",
        "form": form,
        "reading": reading,
        "shown": _shown(reading) if reading else (),
        "stops": sum(1 for _ in reading.organ.stops()) if reading else 0,
    }
    return page(request, "instruments/paste.html", context, part="reading", status=status)


def _shown(reading: Reading) -> tuple[ShownLine, ...]:
    unread = {one.line for one in reading.unread}
    doubts = defaultdict(list)
    for one in reading.assumed:
        doubts[one.line].append(one.what)
    return tuple(
        ShownLine(one.line, one.text, one.read_as, one.line in unread, tuple(doubts[one.line]))
        for one in reading.lines
    )
