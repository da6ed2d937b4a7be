"""People: who is in the department, and how they get in."""

from django.contrib.auth.models import User
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.views.decorators.http import require_GET, require_POST

from config.access import Role, allow
from config.pages import page
from services import actions, models
from services.forms import PersonForm


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
    user = get_object_or_404(User, person__pk=pk)
    link = request.build_absolute_uri(actions.sign_in_path(user))
    return _people(request, PersonForm(), link=link, invited=user.person)


def _people(
    request: HttpRequest, form: PersonForm, status: int = 200, **more: object
) -> HttpResponse:
    context = {"room": "people", "people": models.Person.objects.all(), "form": form, **more}
    return page(request, "services/people.html", context, status=status)
