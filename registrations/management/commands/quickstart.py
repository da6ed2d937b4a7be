from datetime import date
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandParser
from django.utils import timezone
from django.utils.text import slugify

from instruments.models import Instrument
from registrations.cards.deck import services_pdf
from registrations.cards.papers import DEFAULT_PAPER
from registrations.demo.actions import load_demo
from registrations.queries import registrations_of
from registrations.registration import Registration
from registrations.review import review
from services.models import Person, Piece
from services.order import Service
from services.queries import next_service, service_value

PORT = 8000


class Command(BaseCommand):
    help = "Set Loftbook up, check the coming service, write its console cards, and serve."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--no-server", action="store_true", help="stop before serving")
        parser.add_argument("--no-demo", action="store_true", help="begin with an empty book")
        parser.add_argument("--port", type=int, default=PORT)

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("migrate", verbosity=0)
        self.stdout.write("The database is ready.")
        today = timezone.localdate()
        if not options["no_demo"] and _is_empty():
            load_demo(today)
            self.stdout.write("The demo parish is in it; all its people are invented.")
        self._show_coming_service(today)
        base = f"http://localhost:{options['port']}"
        self._say_how_to_sign_in(base)
        if not options["no_server"]:
            self.stdout.write(f"Serving at {base} (stop with Ctrl+C)")
            call_command("runserver", f"127.0.0.1:{options['port']}", "--noreload")

    def _show_coming_service(self, today: date) -> None:
        row = next_service(today)
        if row is None:
            self.stdout.write("No service is planned yet.")
            return
        service = service_value(row)
        found = registrations_of(item.id for item in service.items)
        self.stdout.write(
            f"\nComing: {service.title}, {service.day:%A %d %B}, {service.starts:%H:%M}"
        )
        self._tell_findings(service, found)
        target = Path(settings.VAR_DIR) / "cards" / f"{service.day}-{slugify(service.title)}.pdf"
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(services_pdf((service,), found, DEFAULT_PAPER))
        self.stdout.write(f"\nIts console cards: {target}")

    def _tell_findings(self, service: Service, found: dict[int, Registration]) -> None:
        for item in service.items:
            self.stdout.write(f"  {item.label or item.piece.kind}: {item.piece.title}")
            if item.id not in found:
                self.stdout.write("    no registration yet")
                continue
            registration = found[item.id]
            for change, findings in zip(registration.changes, review(registration), strict=True):
                for finding in findings:
                    self.stdout.write(f"    {finding.level} at {change.cue}: {finding.message}")

    def _say_how_to_sign_in(self, base: str) -> None:
        if Person.objects.filter(role="director", user__is_active=True).exists():
            self.stdout.write("")
            call_command("signinlink", base=base, stdout=self.stdout)
        else:
            self.stdout.write('Nobody can sign in yet: manage.py addperson "Your Name" director')


def _is_empty() -> bool:
    return not any(model.objects.exists() for model in (Instrument, Person, Piece))
