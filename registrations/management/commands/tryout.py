import json
from typing import Any

from django.core.management.base import BaseCommand, CommandParser

from registrations.board import labels
from registrations.management.reading import read_drawn
from registrations.tryout import tryout


class Command(BaseCommand):
    help = "Say what a combination sounds like on an organ and what the checks find."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("organ", help="an organ file (readstops --json prints its content)")
        parser.add_argument("combination", help='a file like {"drawn": ["great/twelfth-2-2-3"]}')
        parser.add_argument("--json", action="store_true", help="print JSON")

    def handle(self, *args: Any, **options: Any) -> None:
        organ, combination, music = read_drawn(options["organ"], options["combination"])
        result = tryout(organ, combination, music)
        if options["json"]:
            self.stdout.write(json.dumps(result, ensure_ascii=False, indent=2))
            return
        names = labels(organ)
        for keyboard in result["keyboards"]:
            sound = ", ".join(keyboard["lengths"]) if keyboard["sounds"] else "silent"
            self.stdout.write(f"{keyboard['id']}: {sound}")
        for finding in result["findings"]:
            self.stdout.write(f"{finding['level']}: {finding['message']} [{finding['rule']}]")
            for remedy in finding["remedies"]:
                moves = [f"draw {names[one]}" for one in remedy["draw"]]
                moves += [f"put in {names[one]}" for one in remedy["put_in"]]
                self.stdout.write(f"    {', '.join(moves)}")
        if not result["findings"]:
            self.stdout.write("Nothing to say against it.")
