"""Whole page or part: the one place that decides what an htmx request gets back."""

from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.shortcuts import resolve_url
from django.template.response import TemplateResponse
from django.utils.cache import patch_vary_headers
from django_htmx.http import HttpResponseClientRedirect
from django_htmx.middleware import HtmxDetails


class HtmxRequest(HttpRequest):
    """A request that django-htmx has looked at."""

    htmx: HtmxDetails


class WholeOrPartMiddleware:
    """Render only the named part of a page for htmx, and send its window to sign in when needed."""

    def __init__(self, get_response: Callable[[HtmxRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HtmxRequest) -> HttpResponse:
        response = self.get_response(request)
        patch_vary_headers(response, ["HX-Request"])
        location = response.get("Location", "")
        if request.htmx and location.startswith(resolve_url(settings.LOGIN_URL)):
            return HttpResponseClientRedirect(location)
        return response

    def process_template_response(
        self, request: HtmxRequest, response: TemplateResponse
    ) -> TemplateResponse:
        part = getattr(response, "part", "")
        htmx = request.htmx
        if part and htmx and not htmx.boosted and not htmx.history_restore_request:
            response.template_name = f"{response.template_name}#{part}"
        return response
