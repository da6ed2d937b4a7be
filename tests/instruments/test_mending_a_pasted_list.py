import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from instruments.models import Instrument
from instruments.queries import load_organ

LIST = "GREAT\nOpen Diapason 8\nPrinzzzipallll of some sort\nFifteenth 2"
ODD = "Prinzzzipallll of some sort"


def an_upload(content: bytes, name: str = "stops.txt") -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content)


def test_a_line_that_was_not_read_can_be_mended_where_it_stands(director_client):
    page = director_client.post("/organs/read/", {"text": LIST}).content.decode()

    assert f'name="line-3" value="{ODD}"' in page
    mended = {"text": LIST, "line-3": "Principal 4", "was-3": ODD}
    page = director_client.post("/organs/read/", mended).content.decode()
    assert "3 stops understood" in page
    assert "Principal 4\nFifteenth 2" in page


def test_mended_lines_are_saved_with_the_rest(director_client):
    mended = {"text": LIST, "line-3": "Principal 4", "was-3": ODD}
    director_client.post("/organs/keep/", mended)

    organ = load_organ(Instrument.objects.get().pk)
    assert [stop.name for _, stop in organ.stops()] == ["Open Diapason", "Principal", "Fifteenth"]


def test_a_mended_line_does_not_hit_another_that_stands_there_now(director_client):
    moved = {"text": "GREAT\nFlute 4\nOpen Diapason 8", "line-3": "Principal 4", "was-3": ODD}

    page = director_client.post("/organs/read/", moved).content.decode()

    assert "Principal" not in page.split('id="reading"')[1]


def test_an_assumed_line_shows_its_reason_and_can_be_mended(director_client):
    page = director_client.post("/organs/read/", {"text": "GREAT\nNazard 3"}).content.decode()

    assert 'name="line-2"' in page
    assert "rounded" in page


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("stops.txt", b"GREAT\nOpen Diapason 8\nPrincipal 4"),
        ("stops.csv", b"GREAT,\nOpen Diapason,8\nPrincipal,4"),
        ("stops.tsv", b"GREAT\t\nOpen Diapason\t8\nPrincipal\t4"),
    ],
)
def test_a_file_is_read_in_place_of_the_paste(director_client, name, content):
    page = director_client.post("/organs/read/", {"file": an_upload(content, name)})

    assert "2 stops understood" in page.content.decode()


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"x" * 200_001, "at most 200,000"),
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" * 50, 'role="alert"'),
        (b"", 'role="alert"'),
    ],
)
def test_a_file_that_is_no_list_is_refused_in_words(director_client, content, sentence):
    answer = director_client.post("/organs/read/", {"file": an_upload(content)})

    assert answer.status_code == 422
    assert sentence in answer.content.decode()
