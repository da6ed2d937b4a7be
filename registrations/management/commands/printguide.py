from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.http import Http404

from instruments.queries import load_organ
from registrations.cards.deck import guide_pdf
from registrations.cards.papers import GUIDE_PAPER, PAPERS


class Command(BaseCommand):
    help = "Write the stop guide of an organ as one PDF."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--organ", type=int, required=True, metavar="ID")
        parser.add_argument("--paper", choices=sorted(PAPERS), help="A4 where nothing is said")
        parser.add_argument("--out", required=True, metavar="FILE.pdf")

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            organ = load_organ(options["organ"])
        except Http404 as error:
            raise CommandError(f"There is no organ with the number {options['organ']}.") from error
        target = Path(options["out"])
        paper = PAPERS[options["paper"]] if options["paper"] else GUIDE_PAPER
        try:
            target.write_bytes(guide_pdf(organ, paper))
        except OSError as error:
            raise CommandError(f"{target} cannot be written: {error.strerror}.") from error
        self.stdout.write(f"{target}: the stop guide of {organ.name}")
