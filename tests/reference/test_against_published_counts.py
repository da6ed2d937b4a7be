"""Stop lists as they were published, read, and their stops counted."""

from fractions import Fraction
from pathlib import Path

from instruments.stoplist import read_stoplist

LISTS = Path(__file__).parent


def read(name):
    lines = (LISTS / name).read_text(encoding="utf-8").splitlines()
    return read_stoplist("\n".join(line for line in lines if not line.startswith("#")))


def test_silbermanns_organ_at_freiberg_has_44_stops_in_the_restorers_list():
    organ = read("jehmlich_freiberg_stops.txt").organ

    counts = [(one.name, len(one.stops)) for one in organ.divisions]
    assert counts == [("Brustwerk", 9), ("Hauptwerk", 13), ("Oberwerk", 13), ("Pedal", 9)]


def test_its_rounded_labels_are_read_as_the_quints_they_mean():
    brustwerk = read("jehmlich_freiberg_stops.txt").organ.divisions[0]

    lengths = {stop.name: stop.length for stop in brustwerk.stops}
    assert lengths["Nassat"] == Fraction(8, 3)
    assert lengths["Qvinta"] == Fraction(4, 3)


def test_its_manuals_lack_the_lowest_c_sharp_and_its_pedals_end_at_c1():
    keyboards = {
        one.name: one.compass for one in read("jehmlich_freiberg_stops.txt").organ.keyboards
    }

    assert [len(keyboards[name]) for name in ("Brustwerk", "Oberwerk", "Pedal")] == [48, 48, 24]
