import io
import json

import pytest
from django.core.management import CommandError, call_command

from instruments.models import Instrument
from instruments.organfile import organ_from_dict

LIST = "GREAT\nOpen Diapason 8\nTwelfth 2 2/3\n\nwhat is this line doing here, one wonders?\n"


@pytest.fixture
def file(tmp_path):
    path = tmp_path / "stops.txt"
    path.write_text(LIST, encoding="utf-8")
    return str(path)


def test_json_holds_the_organ_and_what_is_in_doubt(file, capsys):
    call_command("readstops", file, "--json")

    told = json.loads(capsys.readouterr().out)
    organ = organ_from_dict(told["organ"])
    assert [stop.name for _, stop in organ.stops()] == ["Open Diapason", "Twelfth"]
    assert told["unread"] == [{"line": 5, "text": "what is this line doing here, one wonders?"}]
    assert all({"line", "what"} == one.keys() for one in told["assumed"])


def test_words_tell_each_line(file, capsys):
    call_command("readstops", file)

    told = capsys.readouterr().out
    assert "2 stops" in told
    assert "not read, line 5" in told


def test_an_organ_is_kept_when_asked(file, db):
    call_command("readstops", file, "--save")

    assert Instrument.objects.get().stops.count() == 2


def test_standard_input_is_read(monkeypatch, capsys):
    stdin = io.TextIOWrapper(io.BytesIO(LIST.encode()))
    monkeypatch.setattr("sys.stdin", stdin)
    call_command("readstops", "-")

    assert "Twelfth" in capsys.readouterr().out


def test_an_old_western_encoding_is_understood(tmp_path, capsys):
    path = tmp_path / "stops.txt"
    path.write_bytes("GREAT\nFlûte à cheminée 8\n".encode("cp1252"))
    call_command("readstops", str(path))

    assert "Flûte à cheminée" in capsys.readouterr().out


@pytest.mark.parametrize("content", ["", "nothing here is a stop"])
def test_a_text_without_stops_is_refused_in_words(tmp_path, content):
    path = tmp_path / "stops.txt"
    path.write_text(content, encoding="utf-8")

    with pytest.raises(CommandError):
        call_command("readstops", str(path))


def test_a_file_that_is_not_there_is_named():
    with pytest.raises(CommandError, match="cannot be read"):
        call_command("readstops", "no-such-file.txt")
