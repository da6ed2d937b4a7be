import json
import sys
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser

from instruments.actions import save_organ
from instruments.organfile import organ_to_dict
from instruments.stoplist import Reading, StoplistError, read_stoplist
from instruments.textfiles import decoded


class Command(BaseCommand):
    help = "Read a stop list and say what is understood; with --save keep it as an organ."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("file", help="a text file, or - for standard input")
        parser.add_argument(
            "--json", action="store_true", help="print the organ file and the doubts"
        )
        parser.add_argument("--save", action="store_true", help="keep the organ")

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            reading = read_stoplist(_text(options["file"]))
        except StoplistError as error:
            raise CommandError(str(error)) from error
        if options["json"]:
            self.stdout.write(json.dumps(_as_json(reading), ensure_ascii=False, indent=2))
        else:
            self._tell(reading)
        if options["save"]:
            row = save_organ(reading.organ)
            print(
                f"Saved as organ {row.pk}: {row}",
                file=self.stderr if options["json"] else self.stdout,
            )

    def _tell(self, reading: Reading) -> None:
        organ = reading.organ
        self.stdout.write(f"{organ.name}: {sum(1 for _ in organ.stops())} stops")
        for one in reading.lines:
            self.stdout.write(f"{one.line:>4}  {one.text.strip()}  ->  {one.read_as}")
        for assumed in reading.assumed:
            self.stdout.write(f"assumed, line {assumed.line}: {assumed.what}")
        for unread in reading.unread:
            self.stdout.write(self.style.WARNING(f"not read, line {unread.line}: {unread.text}"))


def _text(name: str) -> str:
    try:
        data = sys.stdin.buffer.read() if name == "-" else Path(name).read_bytes()
    except OSError as error:
        raise CommandError(f"{name} cannot be read: {error.strerror}.") from error
    return decoded(data)


def _as_json(reading: Reading) -> dict[str, Any]:
    return {
        "organ": organ_to_dict(reading.organ),
        "unread": [{"line": one.line, "text": one.text} for one in reading.unread],
        "assumed": [{"line": one.line, "what": one.what} for one in reading.assumed],
    }
