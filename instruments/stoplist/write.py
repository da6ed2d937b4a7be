"""Write: an organ as a stop list, in text that :func:`read_stoplist` reads back."""

from collections.abc import Iterator

from instruments.compass import Compass, compass_name, key_name
from instruments.figures import roman
from instruments.mixtures import Zone, ordinals_label
from instruments.organ import Coupler, Coupling, Division, Keyboard, Organ, Stop
from instruments.pitch import length_label
from instruments.stoplist.assemble import read_stoplist
from instruments.stoplist.headings import read_heading
from instruments.stoplist.reading import StoplistError
from instruments.stoplist.tones import tone_words


def write_stoplist(organ: Organ) -> str:
    """Write an organ as a plain stop list: headings, a stop a line, couplers, accessories.

    A stop's tone is told only where its name alone would be read as another. What no stop list
    says (the console, where each control stands) is left out.
    """
    told: frozenset[str] = frozenset()
    while True:
        text = _text(organ, told)
        misread = _misread(organ, text) | told
        if misread == told:
            return text
        told = misread


def _misread(organ: Organ, text: str) -> frozenset[str]:
    """Give the ids of the stops whose tone the text would tell wrongly."""
    try:
        read = read_stoplist(text).organ
    except StoplistError:
        return frozenset()
    tones = {(one.name, at): _tone(stop) for at, (one, stop) in enumerate(read.stops())}
    return frozenset(
        stop.id
        for at, (division, stop) in enumerate(organ.stops())
        if tones.get((division.name, at)) != _tone(stop)
    )


def _tone(stop: Stop) -> tuple[str, str]:
    return stop.family.value, stop.construction.value


def _text(organ: Organ, told: frozenset[str]) -> str:
    blocks = [
        [line for line in (organ.name, organ.place) if line],
        list(_tuning(organ)),
        *([*_division(organ, division, told)] for division in organ.divisions),
        _section("Couplers", [_coupler(organ, one) for one in organ.couplers]),
        _section("Accessories", list(organ.accessories)),
        organ.notes.splitlines(),
    ]
    return "\n\n".join("\n".join(block) for block in blocks if block) + "\n"


def _section(heading: str, lines: list[str]) -> list[str]:
    return [heading, *lines] if lines else []


def _tuning(organ: Organ) -> Iterator[str]:
    if organ.pitch_hz != 440:
        yield f"Pitch: a1 = {organ.pitch_hz:g} Hz"
    if organ.temperament != "equal":
        yield f"Temperament: {organ.temperament}"
    if organ.coupling is not Coupling.DIRECT:
        yield f"Coupling: {organ.coupling}"


def _division(organ: Organ, division: Division, told: frozenset[str]) -> Iterator[str]:
    heading = read_heading(division.name)
    boxed = heading is not None and heading.enclosed
    marks = ["enclosed"] if division.enclosed else ["unenclosed"] if boxed else []
    if division.keyboard is None:
        marks.append("floating")
    else:
        marks += _keyboard_marks(organ.keyboard(division.keyboard), division)
    yield f"{division.name} ({', '.join(marks)})" if marks else division.name
    home = organ.home_compass(division)
    for stop in division.stops:
        yield _stop(organ, division, stop, home, told)
    yield from (tremulant.name for tremulant in division.tremulants)


def _keyboard_marks(keyboard: Keyboard, division: Division) -> Iterator[str]:
    if keyboard.id != division.id:
        yield f"on the {keyboard.name}"
    yield compass_name(keyboard.compass)


def _stop(organ: Organ, division: Division, stop: Stop, home: Compass, told: frozenset[str]) -> str:
    parts = [stop.name]
    if stop.ranks > 1:
        parts.append(roman(stop.ranks))
    if stop.length is not None:
        parts.append(length_label(stop.length) + "'")
    remarks = [*_composition(stop), *_compass(stop, home)]
    remarks += [stop.half.value] if stop.half else []
    remarks += [f"rank {stop.rank}"] if stop.rank else []
    remarks += _lender(organ, stop)
    remarks += [tone_words(stop)] if stop.id in told else []
    return " ".join([*parts, *(f"({remark})" for remark in remarks)])


def _composition(stop: Stop) -> Iterator[str]:
    if stop.composition:
        yield "; ".join(map(_zone, stop.composition))


def _zone(zone: Zone) -> str:
    return f"{key_name(zone.start)} {ordinals_label(zone.lengths)}"


def _compass(stop: Stop, home: Compass) -> Iterator[str]:
    if stop.compass is None:
        return
    if stop.compass.high == home.high and not stop.compass.missing:
        yield f"from {key_name(stop.compass.low)}"
    else:
        yield compass_name(stop.compass)


def _lender(organ: Organ, stop: Stop) -> Iterator[str]:
    for division, lender in organ.stops():
        if lender.id == stop.borrowed_from:
            length = "" if lender.length is None else f" {length_label(lender.length)}"
            yield f"from {division.name} {lender.name}{length}"


def _coupler(organ: Organ, coupler: Coupler) -> str:
    source = organ.division(coupler.source)
    target = organ.keyboard(coupler.target)
    if coupler.unison_off:
        return f"{source.name} unison off"
    octave = "" if coupler.octave == 8 else f" {coupler.octave}"
    return f"{source.name} to {target.name}{octave}"
