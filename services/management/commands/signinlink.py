from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser

from services.actions import sign_in_path
from services.models import Person


class Command(BaseCommand):
    help = "Print a link that signs somebody in once: the first director, or the person named."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("name", nargs="?", help="the person's name, or the beginning of it")
        parser.add_argument(
            "--base", default="http://localhost:8000", help="where Loftbook is served"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        people = Person.objects.filter(user__is_active=True)
        name = options["name"]
        person = (
            people.filter(name__istartswith=name).first()
            if name
            else people.filter(role="director").order_by("pk").first()
        )
        if person is None or person.user is None:
            known = ", ".join(people.values_list("name", flat=True)) or "nobody; see addperson"
            raise CommandError(f"Nobody of that name can sign in. There is: {known}.")
        self.stdout.write(f"{person.name} ({person.role}) signs in once, within a day, at")
        self.stdout.write(f"  {options['base'].rstrip('/')}{sign_in_path(person.user)}")
