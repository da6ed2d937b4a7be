from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, CommandParser

from instruments.compass import CompassError, compass_name, key_name, parse_key
from instruments.organ import Organ
from instruments.temperament import find_temperament
from registrations.combination import Combination
from registrations.management.reading import read_drawn
from registrations.spectrum import spectrum
from registrations.synthesis import SynthesisError, wav_bytes


class Command(BaseCommand):
    help = (
        "Write a sketch of the pitches that a combination sounds as a WAV file. "
        "It is made of sine waves: not the sound of the organ."
    )

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("organ", help="an organ file (readstops --json prints its content)")
        parser.add_argument("combination", help='a file like {"drawn": ["great/twelfth-2-2-3"]}')
        keys = parser.add_mutually_exclusive_group(required=True)
        keys.add_argument("--key", help="one key, like c1")
        keys.add_argument("--chord", help='several keys, like "c1 e1 g1"')
        parser.add_argument("--keyboard", required=True, help="the id of the keyboard played")
        parser.add_argument("--out", required=True, help="the WAV file to write")
        parser.add_argument("--seconds", type=float, default=2.0, help="how long (2)")

    def handle(self, *args: Any, **options: Any) -> None:
        organ, combination, _ = read_drawn(options["organ"], options["combination"])
        keyboard, out = options["keyboard"], options["out"]
        keys = _keys(options["key"] or options["chord"], organ, keyboard)
        content = _sound(organ, combination, keyboard, keys, options["seconds"])
        try:
            Path(out).write_bytes(content)
        except OSError as error:
            raise CommandError(f"{out} cannot be written: {error.strerror}.") from error
        played = " ".join(map(key_name, keys))
        self.stdout.write(
            f"{out}: {played} on the {organ.keyboard(keyboard).name}. "
            "A sketch of the pitches, not the sound of the organ."
        )
        if find_temperament(organ.temperament) is None:
            self.stdout.write(
                f"The temperament “{organ.temperament}” is not known here: equal is used."
            )


def _keys(written: str, organ: Organ, keyboard: str) -> tuple[int, ...]:
    known = {one.id: one for one in organ.keyboards}
    if keyboard not in known:
        ids = ", ".join(known)
        raise CommandError(f"This organ has no keyboard “{keyboard}”. It has: {ids}.")
    compass = known[keyboard].compass
    try:
        keys = tuple(parse_key(one) for one in written.split())
    except CompassError as error:
        raise CommandError(str(error)) from error
    for key in keys:
        if key not in compass:
            raise CommandError(
                f"The {known[keyboard].name} has no {key_name(key)}. "
                f"It goes {compass_name(compass)}."
            )
    if not keys:
        raise CommandError("Name a key, like c1.")
    return keys


def _sound(
    organ: Organ, combination: Combination, keyboard: str, keys: tuple[int, ...], seconds: float
) -> bytes:
    sound = spectrum(organ, combination, keyboard, *keys)
    if not sound.powers:
        raise CommandError("Nothing sounds there. Draw a stop that reaches this keyboard.")
    try:
        return wav_bytes(sound, seconds)
    except SynthesisError as error:
        raise CommandError(str(error)) from error
