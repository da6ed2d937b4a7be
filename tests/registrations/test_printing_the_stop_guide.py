import io

import pytest
from django.core.management import CommandError, call_command
from pypdf import PdfReader

from tests.factories import InstrumentFactory


@pytest.fixture
def organ(db):
    return InstrumentFactory()


def test_a_volunteer_finds_the_guides_where_cards_are_printed(printer_client, organ):
    page = printer_client.get("/print/").content.decode()

    assert f'action="/organs/{organ.pk}/guide.pdf"' in page


def test_without_an_organ_there_is_no_guide_to_print(printer_client):
    assert "Stop guides" not in printer_client.get("/print/").content.decode()


def test_a_volunteer_prints_the_guide_on_a4(printer_client, organ):
    answer = printer_client.get(f"/organs/{organ.pk}/guide.pdf")
    pages = PdfReader(io.BytesIO(answer.content)).pages

    assert answer.headers["Content-Type"] == "application/pdf"
    assert pages[0].mediabox.width == pytest.approx(595.3, 0.01)
    assert "Open Diapason" in pages[0].extract_text()


def test_a_paper_that_does_not_exist_is_no_page(printer_client, organ):
    assert printer_client.get(f"/organs/{organ.pk}/guide.pdf?paper=a99").status_code == 404


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "a6"])
def test_the_command_writes_the_very_bytes_of_the_page(printer_client, organ, tmp_path, paper):
    out = tmp_path / "guide.pdf"
    call_command("printguide", organ=organ.pk, paper=paper, out=str(out), verbosity=0)

    page = printer_client.get(f"/organs/{organ.pk}/guide.pdf?paper={paper}")
    assert out.read_bytes() == page.content


def test_the_command_prints_on_a4_where_nothing_is_said(organ, tmp_path):
    plain, on_a4 = tmp_path / "plain.pdf", tmp_path / "a4.pdf"
    call_command("printguide", "--organ", str(organ.pk), "--out", str(plain))
    call_command("printguide", "--organ", str(organ.pk), "--paper", "a4", "--out", str(on_a4))

    assert plain.read_bytes() == on_a4.read_bytes()


def test_the_command_says_when_there_is_no_such_organ(db, tmp_path):
    with pytest.raises(CommandError, match="no organ with the number 99999"):
        call_command("printguide", "--organ", "99999", "--out", str(tmp_path / "x.pdf"))


def test_the_command_says_where_it_cannot_write(organ, tmp_path):
    with pytest.raises(CommandError, match="cannot be written"):
        call_command("printguide", "--organ", str(organ.pk), "--out", str(tmp_path))
