from typing import Any

from django.core.management.base import BaseCommand, CommandParser

from config.access import Role
from services.actions import add_person, sign_in_path
from services.models import Person


class Command(BaseCommand):
    help = "Add a person to the department and print the link that signs them in once."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("name")
        parser.add_argument("role", choices=[role.value for role in Role])
        parser.add_argument(
            "--base", default="http://localhost:8000", help="where Loftbook is served"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        person = Person(name=options["name"], role=options["role"])
        user = add_person(person)
        self.stdout.write(f"{person.name} ({person.role}) signs in once, within a day, at")
        self.stdout.write(f"  {options['base'].rstrip('/')}{sign_in_path(user)}")
