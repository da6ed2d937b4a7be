"""Signing in and out."""

from django.contrib.auth import login, update_session_auth_hash
from django.contrib.auth.forms import SetPasswordForm
from django.contrib.auth.models import User
from django.contrib.auth.tokens import default_token_generator
from django.contrib.auth.views import LoginView, LogoutView
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect
from django.utils.http import urlsafe_base64_decode
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_GET, require_POST

from config.access import EVERYONE, Role, allow, public, role_of
from config.pages import page

sign_in = public(LoginView.as_view(template_name="sign_in.html", redirect_authenticated_user=True))
sign_out = public(LogoutView.as_view())


@public
@never_cache
@require_GET
def welcome(request: HttpRequest, uid: str, token: str) -> HttpResponse:
    """Ask before a one-time link is used up: mail programs open links by themselves."""
    user = _invited(uid, token)
    status = 200 if user else 404
    return page(
        request, "welcome.html", {"invited": user, "uid": uid, "token": token}, status=status
    )


@public
@require_POST
def sign_in_once(request: HttpRequest, uid: str, token: str) -> HttpResponse:
    """Sign in by a one-time link, which is void from then on."""
    user = _invited(uid, token)
    if user is None:
        return page(request, "welcome.html", {"invited": None}, status=404)
    login(request, user)
    return redirect("password" if not user.has_usable_password() else "front")


def _invited(uid: str, token: str) -> User | None:
    try:
        pk = int(urlsafe_base64_decode(uid))
    except ValueError:
        return None
    user = User.objects.filter(pk=pk, is_active=True).first()
    return user if default_token_generator.check_token(user, token) else None


@require_GET
@allow(*EVERYONE)
def password(request: HttpRequest) -> HttpResponse:
    """Offer to choose a password for the next time."""
    user = get_object_or_404(User, pk=request.user.pk)
    return page(request, "password.html", {"form": SetPasswordForm(user)})


@require_POST
@allow(*EVERYONE)
def choose_password(request: HttpRequest) -> HttpResponse:
    """Keep a password of the person's own choice."""
    user = get_object_or_404(User, pk=request.user.pk)
    form = SetPasswordForm(user, request.POST)
    if not form.is_valid():
        return page(request, "password.html", {"form": form}, status=422)
    form.save()
    update_session_auth_hash(request, user)
    return redirect("front")


@require_GET
@allow(*EVERYONE)
def front(request: HttpRequest) -> HttpResponse:
    """Lead everyone to the page their work begins on."""
    return redirect("print" if role_of(request.user) is Role.PRINTER else "this_week")
