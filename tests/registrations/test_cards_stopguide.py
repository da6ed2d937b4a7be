"""The sheets of the stop guide, as values and as a file that is read back."""

import io
import re
from dataclasses import replace

import pypdf
import pytest

from instruments.figures import stop_figure, stop_name
from registrations.cards.content import SheetKind
from registrations.cards.deck import guide_pdf
from registrations.cards.papers import PAPERS
from registrations.cards.stopguide import NO_STOPS, guide_sheets
from tests.builders import a_stop, an_organ
from tests.registrations.guides import ORGANS, PARISH, TOWN
from tests.registrations.sheets import words_of
from tests.registrations.test_guidewords import BREAKING


def entries_of(organ):
    return {one.name: one for sheet in guide_sheets(organ) for one in sheet.entries}


def facts_of(organ, name):
    return list(entries_of(organ)[name].facts)


def read_back(organ, paper="a4"):
    return pypdf.PdfReader(io.BytesIO(guide_pdf(organ, PAPERS[paper])))


def test_every_division_has_a_sheet_and_the_pedals_come_last():
    sheets = guide_sheets(TOWN)

    assert [one.title for one in sheets] == ["Great", "Positive", "Solo", "Echo", "Pedal"]
    assert {one.kind for one in sheets} == {SheetKind.GUIDE}


def test_a_division_without_stops_has_no_sheet():
    organ = an_organ(great=["Principal 8"], swell=[])

    assert [one.title for one in guide_sheets(organ)] == ["Great"]


def test_an_organ_without_stops_says_so():
    (sheet,) = guide_sheets(an_organ(great=[]))

    assert (sheet.note, sheet.entries) == (NO_STOPS, ())


def test_a_stop_says_what_it_is_and_what_is_heard():
    twelfth = entries_of(PARISH)["Twelfth"]

    assert twelfth.figure == "2⅔′"
    assert "you hear g2 (2 cents sharp), an octave and a fifth higher" in twelfth.told


def test_a_stop_says_what_it_stands_on_goes_with_and_avoids():
    facts = facts_of(PARISH, "Mixture")

    assert facts[0] == ("Draw it on", "Open Diapason 8′, Principal 4′ and Fifteenth 2′.")
    assert facts[1] == ("Goes with", "Twelfth 2⅔′ and Trumpet 8′.")
    assert facts[2][1].startswith("Swell, through Swell to Great: Stopped Diapason 8′")
    assert "Tierce" not in facts[2][1]
    assert facts[3][1].startswith("Celeste 8′ of the Swell. A celeste is tuned")
    assert facts[4][1].startswith("Tierce 1⅗′ of the Swell. The third that a tierce sounds")


def test_a_stop_that_stands_alone_is_not_drawn_on_anything():
    assert "Draw it on" not in dict(facts_of(PARISH, "Open Diapason"))
    assert "It may be drawn alone." in entries_of(PARISH)["Open Diapason"].told


def test_a_mixture_says_where_it_breaks_and_whether_that_is_known():
    organ = an_organ(great=[a_stop("Mixture", composition=BREAKING), a_stop("Scharff", ranks=3)])

    assert "It breaks back: from C: 2′ and 1⅓′; from c1:" in entries_of(organ)["Mixture"].told
    assert "these are the usual ones" in entries_of(organ)["Scharff"].told


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("organ", ORGANS, ids=["parish", "chamber", "town"])
def test_every_stop_is_read_back_from_the_file(organ, paper):
    text = words_of(read_back(organ, paper))

    heads = [f"{stop_figure(one)} {stop_name(one)}".strip() for _, one in organ.stops()]
    assert [one for one in heads if f" {one} " not in text] == []


def test_every_division_has_a_bookmark():
    assert [one.title for one in read_back(TOWN).outline] == [
        "Great",
        "Positive",
        "Solo",
        "Echo",
        "Pedal",
    ]


def test_the_file_says_what_it_is():
    metadata = read_back(PARISH).metadata

    assert (metadata.title, metadata.subject) == ("Stop guide, An organ", "Stop guide")


def test_the_foot_names_no_player_and_every_page_is_counted():
    text = words_of(read_back(PARISH))

    assert "player" not in text.lower()
    assert "Page 1 of" in text


def test_the_same_organ_gives_the_same_bytes():
    assert guide_pdf(PARISH, PAPERS["a4"]) == guide_pdf(PARISH, PAPERS["a4"])


def test_another_stop_gives_other_bytes():
    other = replace(PARISH, name="Another")

    assert guide_pdf(PARISH, PAPERS["a4"]) != guide_pdf(other, PAPERS["a4"])


def test_nothing_but_the_foot_is_smaller_than_14_points():
    drawn = b"".join(page.get_contents().get_data() for page in read_back(PARISH).pages)
    sizes = {float(size) for size in re.findall(rb" ([\d.]+) Tf", drawn)}

    assert min(sizes) == 9
    assert sorted(sizes)[1] == 14
