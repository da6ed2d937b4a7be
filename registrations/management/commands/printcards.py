from datetime import date
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.utils import timezone

from registrations.cards.deck import services_pdf
from registrations.cards.papers import DEFAULT_PAPER, PAPERS
from registrations.queries import registrations_of
from services.order import Service
from services.queries import next_service, service_value, services_on, services_with


class Command(BaseCommand):
    help = "Write the console cards of a service, or of all services of a day, as one PDF."

    def add_arguments(self, parser: CommandParser) -> None:
        which = parser.add_mutually_exclusive_group(required=True)
        which.add_argument("--next", action="store_true", help="the coming service")
        which.add_argument("--date", type=date.fromisoformat, metavar="2026-12-25")
        which.add_argument("--service", type=int, metavar="ID")
        parser.add_argument("--paper", choices=sorted(PAPERS), help="A5 where nothing is said")
        parser.add_argument("--out", required=True, metavar="FILE.pdf")

    def handle(self, *args: Any, **options: Any) -> None:
        services = _chosen(options)
        found = registrations_of(item.id for service in services for item in service.items)
        target = Path(options["out"])
        paper = PAPERS[options["paper"]] if options["paper"] else DEFAULT_PAPER
        try:
            target.write_bytes(services_pdf(services, found, paper))
        except OSError as error:
            raise CommandError(f"{target} cannot be written: {error.strerror}.") from error
        self.stdout.write(f"{target}: {', '.join(service.title for service in services)}")


def _chosen(options: dict[str, Any]) -> tuple[Service, ...]:
    if options["service"] is not None:
        services, where = services_with(options["service"]), f"with the number {options['service']}"
    elif options["date"] is not None:
        services, where = services_on(options["date"]), f"on {options['date']}"
    else:
        row = next_service(timezone.localdate())
        services, where = (service_value(row),) if row else (), "from today on"
    if not services:
        raise CommandError(f"There is no service {where}.")
    return services
