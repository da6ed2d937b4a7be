"""The drawn file is judged from outside: read back with pypdf and pdfplumber, qpdf, poppler."""

import io
import re
import shutil
import subprocess

import pdfplumber
import pytest

from registrations.cards.content import service_sheets
from registrations.cards.draw import draw_pdf
from registrations.cards.papers import PAPERS
from services.order import Piece
from tests.builders import an_organ
from tests.registrations.sheets import (
    a_registration,
    a_service,
    a_sheet,
    an_item,
    pdf_of,
    words_of,
)

EVERY_PAPER = pytest.mark.parametrize("paper", PAPERS)
ORGAN = an_organ(
    couplers=["Récit to Great"],
    tremulants=["récit"],
    great=[
        "Montre 8",
        "Große Quinte 10 2/3",
        "Nasard 2 2/3",
        "Septième 1 1/7",
        "Fourniture 15.19.22",
    ],
    récit=["Voix céleste 8", "Tierce 1 3/5"],
    pedal=["Soubasse 16"],
)
DRAWN = [
    "10⅔′ Große Quinte",
    "8′ Montre",
    "2⅔′ Nasard",
    "1⅐′ Septième",
    "III Fourniture",
    "8′ Voix céleste",
    "1⅗′ Tierce",
    "Tremulant",
    "16′ Soubasse",
    "Récit to Great",
]


def full_sheet(**given):
    return a_sheet(ORGAN.control_ids(), organ=ORGAN, **given)


def tool(name: str) -> str:
    found = shutil.which(name)
    if found is None:
        pytest.skip(f"{name} is not installed: this outside look at a card is left out")
    return found


@EVERY_PAPER
def test_every_drawn_stop_is_read_back_exactly_once(paper):
    text = words_of(pdf_of(full_sheet(), paper=paper))

    assert {stop: text.count(f" {stop} ") for stop in DRAWN} == dict.fromkeys(DRAWN, 1)


def test_text_is_read_back_in_reading_order():
    text = words_of(pdf_of(full_sheet(right="great", feet="pedal"), paper="a6"))

    parts = ("A♭", "Verse 1", "Right hand", "8′ Montre", "III", "Récit ", "Tierce", "16′")
    places = [text.index(part) for part in parts]
    assert places == sorted(places)


def test_another_reader_reads_the_same():
    file = io.BytesIO(draw_pdf((full_sheet(),), PAPERS["a6"], title="Cards"))
    with pdfplumber.open(file) as pdf:
        text = " ".join(page.extract_text() for page in pdf.pages)

    assert [stop for stop in DRAWN if stop not in text] == []
    assert "A♭" in text


def test_flats_and_sharps_of_titles_are_read_back():
    item = an_item(piece=Piece("Fugue in E♭ “St Anne”", key="eb major"))
    text = words_of(pdf_of(full_sheet(item=item)))

    assert "Fugue in E♭ “St Anne”" in text
    assert "E♭ major" in text


def test_a_character_without_a_shape_leaves_a_box():
    item = an_item(piece=Piece("Toccata 前奏曲"))

    assert "Toccata □□□" in words_of(pdf_of(full_sheet(item=item)))


def test_the_same_content_gives_the_same_bytes():
    once, again = (draw_pdf((full_sheet(),), PAPERS["a5"], title="Cards") for _ in range(2))

    assert once == again


def test_another_player_gives_other_bytes():
    other = full_sheet(item=an_item(player="Jo Reeve"))

    assert draw_pdf((full_sheet(),), PAPERS["a5"], title="Cards") != draw_pdf(
        (other,), PAPERS["a5"], title="Cards"
    )


def test_the_file_says_its_title_and_language():
    reader = pdf_of(full_sheet())

    assert reader.metadata.title == "Cards"
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"


def test_every_sheet_has_a_bookmark_on_its_first_page():
    items = an_item(1), an_item(2, piece=Piece("Toccata"))
    registrations = {1: a_registration(ORGAN.control_ids(), organ=ORGAN)}
    reader = pdf_of(*service_sheets(a_service(*items), registrations), paper="a6")

    marks = [(one.title, reader.get_destination_page_number(one)) for one in reader.outline]
    assert [title for title, _ in marks] == ["Advent Sunday", items[0].piece.title, "Toccata"]
    assert [place for _, place in marks] == [0, 1, len(reader.pages) - 1]


@EVERY_PAPER
def test_the_page_has_the_size_of_the_paper(paper):
    box = pdf_of(full_sheet(), paper=paper).pages[0].mediabox

    size = [round(float(side) / 72 * 25.4, 1) for side in (box.width, box.height)]
    assert size == [PAPERS[paper].width, PAPERS[paper].height]


def test_only_our_fonts_are_there_and_all_are_embedded():
    fonts = [
        font.get_object()
        for page in pdf_of(full_sheet()).pages
        for font in page["/Resources"]["/Font"].values()
    ]

    assert {re.sub("^.*[+]", "", font["/BaseFont"]) for font in fonts} == {
        "SourceSans3-Regular",
        "SourceSans3-Semibold",
        "SourceSans3-Bold",
        "LoftbookAccidentals-Regular",
    }
    assert all("/FontFile2" in font["/FontDescriptor"] for font in fonts)


def test_everything_is_black():
    pages = pdf_of(full_sheet()).pages
    colours = re.findall(
        rb"[\d. ]+ (?:rg|RG|g|G|k|K)\b", b"".join(p.get_contents().get_data() for p in pages)
    )

    assert {colour.rsplit(b" ", 1)[0].strip() for colour in colours} <= {b"0 0 0", b"0"}


def test_qpdf_finds_no_fault(tmp_path):
    file = tmp_path / "card.pdf"
    file.write_bytes(draw_pdf((full_sheet(),), PAPERS["a5"], title="Cards"))
    checked = subprocess.run([tool("qpdf"), "--check", file], capture_output=True, text=True)

    assert checked.returncode == 0, checked.stdout + checked.stderr


def test_poppler_finds_every_font_embedded_and_readable(tmp_path):
    file = tmp_path / "card.pdf"
    file.write_bytes(draw_pdf((full_sheet(),), PAPERS["a5"], title="Cards"))
    listed = subprocess.run([tool("pdffonts"), file], capture_output=True, text=True, check=True)

    rows = listed.stdout.splitlines()[2:]
    assert len(rows) == 4
    assert all(re.search(r" yes yes yes ", row) for row in rows)
