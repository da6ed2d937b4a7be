import pytest

from instruments.textfiles import decoded, list_text

WORDS = "Flûte à cheminée 8"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_text_is_read_in_the_encodings_people_save_in(encoding):
    assert decoded(WORDS.encode(encoding)) == WORDS


def test_text_marked_the_other_way_round_is_read_too():
    assert decoded(b"\xfe\xff" + WORDS.encode("utf-16-be")) == WORDS


def test_bytes_that_mean_nothing_are_marked_and_lose_nothing_else():
    assert decoded(b"Principal\x81 4\xfc") == "Principal\ufffd 4ü"


@pytest.mark.parametrize(
    ("name", "table"),
    [
        ("stops.csv", "Great,,\nPrincipal,4,61\n"),
        ("stops.csv", 'Great;;\n"Principal";4;61\n'),
        ("STOPS.TSV", "Great\t\t\nPrincipal\t4\t61\n"),
    ],
)
def test_the_cells_of_a_table_stand_apart(name, table):
    assert list_text(name, table.encode()) == "Great\nPrincipal  4  61"


def test_a_text_file_is_taken_as_it_is():
    assert list_text("stops.txt", b"Great, Swell\nPrincipal 4") == "Great, Swell\nPrincipal 4"
