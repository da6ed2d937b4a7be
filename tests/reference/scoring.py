"""Scoring: what a reading of a stop list has right, against the truth written beside the list.

A list stands in ``stoplists/*.txt``: its source, its shape, the text, and the truth, a stop a line
with its figure (feet, or ranks in Roman) and the families that handbooks give it.
"""

import re
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path

from instruments.lexicon import fold
from instruments.organ import Division, Organ, Stop
from instruments.pitch import length_label
from instruments.stoplist import Reading, StoplistError, read_stoplist

FOLDER = Path(__file__).with_name("stoplists")
COUPLER = r"coupler (.+) > (.+?)(?: (16|4|off))?"
ROMAN = {"I": 1, "V": 5, "X": 10}


@dataclass(frozen=True)
class Known:
    """A stop as it truly is."""

    division: str
    name: str
    figure: str
    families: frozenset[str]
    extra: str = ""


@dataclass(frozen=True)
class Printed:
    """A list with its truth."""

    title: str
    shape: str
    text: str
    stops: tuple[Known, ...]
    couplers: frozenset[tuple[str, str, str]]
    tremulants: tuple[str, ...]


@dataclass
class Score:
    """Counts that add up over lists; ``faults`` says in words what is wrong."""

    counts: Counter = field(default_factory=Counter)
    faults: list[str] = field(default_factory=list)

    def share(self, part: str, whole: str) -> float:
        return self.counts[part] / self.counts[whole] if self.counts[whole] else 1.0

    def add(self, other: "Score") -> None:
        self.counts.update(other.counts)


def printed_lists() -> list[Printed]:
    return [_printed(path) for path in sorted(FOLDER.glob("*.txt"))]


def _printed(path: Path) -> Printed:
    head, rest = path.read_text(encoding="utf-8").split("=== list\n")
    text, truth = rest.split("=== truth\n")
    division, stops, couplers, tremulants = "", [], set(), []
    for line in truth.splitlines():
        if line.startswith("["):
            division = line.strip("[]")
        elif line.startswith("coupler "):
            source, target, octave = re.fullmatch(COUPLER, line).groups()
            couplers.add((source, target, octave or "8"))
        elif line.startswith("tremulant "):
            tremulants.append(line.removeprefix("tremulant "))
        elif " | " in line:
            name, figure, families, *extra = line.split(" | ")
            known = Known(division, name, figure, frozenset(families.split()), "".join(extra))
            stops.append(known)
    shape = re.search(r"^shape: (.+)$", head, re.MULTILINE)[1]
    return Printed(path.stem, shape, text, tuple(stops), frozenset(couplers), tuple(tremulants))


def score(printed: Printed) -> Score:
    try:
        reading = read_stoplist(printed.text)
    except StoplistError as error:
        return Score(Counter({"true stops": len(printed.stops)}), [str(error)])
    names = _division_names(printed, reading.organ)
    result = Score()
    _score_stops(printed, reading.organ, names, result)
    _score_couplers(printed, reading.organ, names, result)
    _score_lines(printed, reading, result)
    return result


def _division_names(printed: Printed, organ: Organ) -> dict[str, str]:
    """Give the read division's id for each true name: by its words, else by its place."""
    true = list(dict.fromkeys(stop.division for stop in printed.stops))
    true += [name for pair in sorted(printed.couplers) for name in pair[:2] if name not in true]
    ids, found = [one for one in organ.divisions if one.stops], {}
    for name in true:
        alike = [one for one in ids if _same_division(name, one)]
        if alike and alike[0].id not in found.values():
            found[name] = alike[0].id
    left = [one.id for one in ids if one.id not in found.values()]
    return found | dict(zip([name for name in true if name not in found], left, strict=False))


def _same_division(name: str, division: Division) -> bool:
    true, read = set(_folded(name)), set(_folded(division.name))
    return bool(true and read) and (true <= read or read <= true)


def _folded(text: str) -> list[str]:
    return [fold(word) for word in re.split(r"[\s'’-]+", text) if word not in {"Manual", "de"}]


def _score_stops(printed: Printed, organ: Organ, names: dict[str, str], result: Score) -> None:
    left = [(division.id, stop) for division, stop in organ.stops()]
    result.counts["true stops"] += len(printed.stops)
    result.counts["read stops"] += len(left)
    missing = list(printed.stops)
    for matches in (_matches_exactly, _matches_by_name):
        for known in tuple(missing):
            here = names.get(known.division)
            found = next((one for one in left if one[0] == here and matches(known, one[1])), None)
            if found:
                left.remove(found)
                missing.remove(known)
                _score_match(known, found[1], result)
    result.faults += [f"missing: {one.division} {one.name} {one.figure}" for one in missing]
    result.faults += [f"too much: {where} {one.name}" for where, one in left]


def _matches_exactly(known: Known, stop: Stop) -> bool:
    same_half = stop.half is None or known.extra in {"", f"half {stop.half}"}
    return _matches_by_name(known, stop) and _same_figure(known.figure, stop) and same_half


def _matches_by_name(known: Known, stop: Stop) -> bool:
    true, read = fold(known.name), fold(stop.name)
    return true == read or (len(read) > 5 and (true in read or read in true))


def _same_figure(figure: str, stop: Stop) -> bool:
    if figure == "-":
        return True
    ranks = re.match(r"[IVX]+(?:-[IVX]+)?\b", figure)
    feet = figure[ranks.end() :].strip() if ranks else figure
    counts = {_number(one) for one in ranks[0].split("-")} if ranks else {stop.ranks}
    read = length_label(stop.length) if stop.length else ""
    return stop.ranks in counts and (not feet or read == feet)


def _number(roman: str) -> int:
    values = [ROMAN[letter] for letter in roman]
    return sum(-one if one < max(values[at:]) else one for at, one in enumerate(values))


def _score_match(known: Known, stop: Stop, result: Score) -> None:
    checks = {
        "pitches right": _same_figure(known.figure, stop),
        "families right": stop.family.value in known.families,
        "extras right": _has_extra(known.extra, stop),
    }
    result.counts["found stops"] += 1
    for what, right in checks.items():
        result.counts[what] += right
        if not right:
            told = f"{stop.length} {stop.ranks} ranks {stop.family} {stop.half} {stop.compass}"
            result.faults.append(f"not {what}: {known} is read as {stop.name} {told}")


def _has_extra(extra: str, stop: Stop) -> bool:
    if extra.startswith("half "):
        return stop.half is not None and stop.half.value == extra.removeprefix("half ")
    if extra.startswith("low "):
        key = {"low c": 12, "low c1": 24}[extra]
        return stop.compass is not None and stop.compass.low == key
    return True


def _score_couplers(printed: Printed, organ: Organ, names: dict[str, str], result: Score) -> None:
    homes = {one.id: one.keyboard for one in organ.divisions}
    true = {
        (names.get(source), homes.get(names.get(target, "")), octave)
        for source, target, octave in printed.couplers
    }
    read = {
        (one.source, one.target, "off" if one.unison_off else str(one.octave))
        for one in organ.couplers
    }
    result.counts["true couplers"] += len(printed.couplers)
    result.counts["all couplers"] += len(printed.couplers) + len(read - true)
    result.counts["couplers right"] += len(read & true)
    shaken = sorted(names.get(one, one) for one in set(printed.tremulants))
    if shaken != sorted({one.id for one in organ.divisions if one.tremulants}) and shaken:
        result.faults.append(f"tremulants: {shaken} wanted")
    result.faults += [f"coupler missing: {one}" for one in sorted(map(str, true - read))]
    result.faults += [f"coupler too much: {one}" for one in sorted(map(str, read - true))]


def _score_lines(printed: Printed, reading: Reading, result: Score) -> None:
    written = {at for at, line in enumerate(printed.text.splitlines(), 1) if line.strip()}
    lost = written - {one.line for one in reading.lines}
    result.counts["lines"] += len(written)
    result.counts["lost lines"] += len(lost)
    result.counts["unread lines"] += len(reading.unread)
    result.faults += [f"lost line {one}" for one in sorted(lost)]
    result.faults += [f"unread {one.line}: {one.text}" for one in reading.unread]
