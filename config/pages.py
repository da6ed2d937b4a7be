"""Pages: a template with its context, and the part of it that htmx may ask for."""

from typing import Any

from django.http import HttpRequest
from django.template.response import TemplateResponse


def page(
    request: HttpRequest,
    template: str,
    context: dict[str, Any],
    *,
    part: str = "",
    status: int = 200,
) -> TemplateResponse:
    """Answer with a page; an htmx request gets its named ``part`` alone (see middleware)."""
    response = TemplateResponse(request, template, context, status=status)
    response.part = part  # type: ignore[attr-defined]
    return response
