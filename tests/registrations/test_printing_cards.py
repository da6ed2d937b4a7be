import io
from datetime import date

import pytest
import time_machine
from django.core.management import CommandError, call_command
from pypdf import PdfReader

from registrations.actions import save_registration
from tests.factories import ItemFactory, a_change


@pytest.fixture
def item(db):
    item = ItemFactory(piece__title="O God, our help in ages past", piece__key="Eb major")
    save_registration(item, (a_change("great/open-diapason-8", "great/twelfth-2-2-3"),))
    return item


def text_of(content: bytes) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(content)).pages)


def test_a_volunteer_prints_all_cards_of_a_service(printer_client, item):
    answer = printer_client.get(f"/services/{item.service_id}/cards.pdf")

    text = text_of(answer.content)
    assert answer.headers["Content-Type"] == "application/pdf"
    assert "Open Diapason" in text
    assert "2⅔′" in text
    assert "E♭ major" in text


def test_one_item_is_printed_by_itself(printer_client, item):
    answer = printer_client.get(f"/items/{item.pk}/card.pdf?paper=a6")

    assert PdfReader(io.BytesIO(answer.content)).pages[0].mediabox.width == pytest.approx(
        297.6, 0.01
    )


def test_a_paper_that_does_not_exist_is_no_page(printer_client, item):
    assert printer_client.get(f"/items/{item.pk}/card.pdf?paper=a99").status_code == 404


@time_machine.travel(date(2026, 11, 25))
def test_the_print_page_says_what_is_missing(printer_client, item):
    ItemFactory(service=item.service, piece__title="A voluntary")

    page = printer_client.get("/print/").content.decode()

    assert "No registration yet for" in page
    assert "A voluntary" in page


@time_machine.travel(date(2026, 11, 30))
def test_the_print_page_says_when_there_is_nothing(printer_client, item):
    assert "nothing to print" in printer_client.get("/print/").content.decode()


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "a6"])
def test_the_command_writes_the_very_bytes_of_the_page(printer_client, item, tmp_path, paper):
    out = tmp_path / "cards.pdf"
    call_command("printcards", service=item.service_id, paper=paper, out=str(out), verbosity=0)

    page = printer_client.get(f"/services/{item.service_id}/cards.pdf?paper={paper}")
    assert out.read_bytes() == page.content


@time_machine.travel(date(2026, 11, 25))
def test_the_coming_service_and_a_day_are_found_by_the_command(item, tmp_path):
    coming, of_the_day = tmp_path / "next.pdf", tmp_path / "day.pdf"
    call_command("printcards", "--next", "--out", str(coming))
    call_command("printcards", "--date", "2026-11-29", "--out", str(of_the_day))

    assert coming.read_bytes() == of_the_day.read_bytes()


@pytest.mark.parametrize("which", [["--date", "2026-12-25"], ["--service", "99999"]])
def test_the_command_says_when_there_is_no_such_service(item, tmp_path, which):
    with pytest.raises(CommandError, match="There is no service"):
        call_command("printcards", *which, "--out", str(tmp_path / "x.pdf"))


def test_the_command_says_where_it_cannot_write(item, tmp_path):
    with pytest.raises(CommandError, match="cannot be written"):
        call_command("printcards", "--service", str(item.service_id), "--out", str(tmp_path))
