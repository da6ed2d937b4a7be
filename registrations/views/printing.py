"""Printing: the volunteer's page, and the PDFs it leads to."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404
from django.utils import timezone
from django.utils.text import slugify
from django.views.decorators.http import require_GET

from config.access import EVERYONE, allow
from config.pages import page
from instruments.queries import load_organ, organ_lines
from registrations.cards.deck import guide_pdf, item_pdf, services_pdf
from registrations.cards.papers import DEFAULT_PAPER, GUIDE_PAPER, PAPERS, Paper
from registrations.queries import registrations_of
from services.models import Item
from services.queries import load_service, services_from

MOST_SERVICES = 40


@require_GET
@allow(*EVERYONE)
def print_page(request: HttpRequest) -> HttpResponse:
    services = services_from(timezone.localdate(), MOST_SERVICES)
    found = registrations_of(item.id for service in services for item in service.items)
    context = {
        "room": "print",
        "services": [
            {
                "service": service,
                "missing": [item for item in service.items if item.id not in found],
            }
            for service in services
        ],
        "papers": _papers(DEFAULT_PAPER),
        "guide_papers": _papers(GUIDE_PAPER),
        "organs": [one for one in organ_lines() if one.stops],
    }
    return page(request, "registrations/print.html", context)


@require_GET
@allow(*EVERYONE)
def service_cards(request: HttpRequest, pk: int) -> HttpResponse:
    service = load_service(pk)
    found = registrations_of(item.id for item in service.items)
    return _pdf(services_pdf((service,), found, _paper(request)), f"{service.day}-{service.title}")


@require_GET
@allow(*EVERYONE)
def item_card(request: HttpRequest, pk: int) -> HttpResponse:
    row = get_object_or_404(Item, pk=pk)
    service = load_service(row.service_id)
    item = next(one for one in service.items if one.id == pk)
    registration = registrations_of([pk]).get(pk)
    name = f"{service.day}-{item.piece.title}"
    return _pdf(item_pdf(service, item, registration, _paper(request)), name)


@require_GET
@allow(*EVERYONE)
def guide_sheets(request: HttpRequest, pk: int) -> HttpResponse:
    organ = load_organ(pk)
    return _pdf(guide_pdf(organ, _paper(request, GUIDE_PAPER)), f"{organ.name} stop guide")


def _paper(request: HttpRequest, default: Paper = DEFAULT_PAPER) -> Paper:
    wanted = request.GET.get("paper")
    if wanted is None:
        return default
    if wanted not in PAPERS:
        raise Http404(f"There is no paper “{wanted}”.")
    return PAPERS[wanted]


def _papers(usual: Paper) -> list[tuple[str, str, bool]]:
    """Give the papers to choose from: key, name, and whether it is the usual one."""
    return [(key, paper.name, paper == usual) for key, paper in PAPERS.items()]


def _pdf(content: bytes, name: str) -> HttpResponse:
    file = f"{slugify(name) or 'cards'}.pdf"
    return HttpResponse(
        content,
        content_type="application/pdf",
        headers={"Content-Disposition": f'inline; filename="{file}"'},
    )
