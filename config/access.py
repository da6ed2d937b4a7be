"""Access: the roles, and the mark every view bears of who may open it."""

from collections.abc import Callable
from enum import StrEnum
from functools import wraps
from typing import Any

from django.contrib.auth.decorators import login_not_required
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponseBase

View = Callable[..., HttpResponseBase]


class Role(StrEnum):
    """What a person does here; an administrator (Django's superuser) may do all of it."""

    DIRECTOR = "director"
    ORGANIST = "organist"
    PRINTER = "printer"


ROLE_WORDS: dict[Role, str] = {
    Role.DIRECTOR: "plans services and writes registrations",
    Role.ORGANIST: "reads the week and its registrations",
    Role.PRINTER: "prints console cards",
}
ANYONE = frozenset({"anyone"})
PLAYERS = (Role.DIRECTOR, Role.ORGANIST)
EVERYONE = (Role.DIRECTOR, Role.ORGANIST, Role.PRINTER)


def role_of(user: Any) -> Role | None:
    """Give the role of a signed-in user; None for one who has none (and for nobody)."""
    if getattr(user, "is_superuser", False):
        return Role.DIRECTOR
    person = getattr(user, "person", None)
    return None if person is None else Role(person.role)


def allow(*roles: Role) -> Callable[[View], View]:
    """Open a view to these roles only; anybody else who is signed in is refused (403)."""

    def decorate(view: View) -> View:
        @wraps(view)
        def guarded(request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponseBase:
            if role_of(request.user) not in roles:
                raise PermissionDenied(
                    "Your role does not open this page. Ask the director of music if it should."
                )
            return view(request, *args, **kwargs)

        guarded.roles = frozenset(role.value for role in roles)  # type: ignore[attr-defined]
        return guarded

    return decorate


def public(view: View) -> View:
    """Open a view to anyone, signed in or not."""
    opened = login_not_required(view)
    opened.roles = ANYONE  # type: ignore[attr-defined]
    return opened


def whoever_asks(request: HttpRequest) -> dict[str, Any]:
    """Tell templates the role of whoever asks, and whether that may plan and write."""
    role = role_of(getattr(request, "user", None))
    return {"role": role, "may_write": role is Role.DIRECTOR, "may_read": role in PLAYERS}
