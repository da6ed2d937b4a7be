import json
import wave

import pytest
from django.core.management import CommandError, call_command

from instruments.organfile import organ_text
from tests.builders import an_organ


@pytest.fixture
def files(tmp_path):
    organ = json.loads(organ_text(an_organ())) | {"temperament": "as it was"}
    drawn = {"drawn": ["great/open-diapason-8", "great/principal-4"]}
    (tmp_path / "organ.json").write_text(json.dumps(organ), encoding="utf-8")
    (tmp_path / "drawn.json").write_text(json.dumps(drawn), encoding="utf-8")
    return [str(tmp_path / "organ.json"), str(tmp_path / "drawn.json")]


@pytest.fixture
def listen(files, tmp_path):
    def run(*said, keyboard="great", out=tmp_path / "sound.wav"):
        call_command("listen", *files, "--keyboard", keyboard, "--out", str(out), *said)
        return out

    return run


@pytest.mark.parametrize("said", [["--key", "c1"], ["--chord", "c1 e1 g1"]])
def test_a_key_or_a_chord_is_written_as_a_wav_file(listen, said):
    with wave.open(str(listen(*said))) as file:
        assert file.getnframes() == 2 * 44_100


def test_it_may_last_as_long_as_asked(listen):
    with wave.open(str(listen("--key", "c1", "--seconds", "0.5"))) as file:
        assert file.getnframes() == 22_050


def test_it_says_what_it_is_and_what_it_is_not(listen, capsys):
    listen("--chord", "c1 e1")

    told = capsys.readouterr().out
    assert "c1 e1 on the Great." in told
    assert "not the sound of the organ" in told


def test_a_temperament_that_is_known_needs_no_word(files, tmp_path, capsys):
    (tmp_path / "organ.json").write_text(organ_text(an_organ()), encoding="utf-8")

    call_command("listen", *files, "--keyboard=great", "--key=c1", f"--out={tmp_path / 'c1.wav'}")
    assert "equal is used" not in capsys.readouterr().out


def test_a_temperament_that_is_not_known_is_told(listen, capsys):
    listen("--key", "c1")

    assert "“as it was” is not known here: equal is used" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("said", "keyboard", "sentence"),
    [
        (["--key", "h1"], "great", "“h1” is not a key"),
        (["--key", "c6"], "great", "The Great has no c6. It goes C-c4"),
        (["--chord", " "], "great", "Name a key"),
        (["--key", "c1"], "solo", "no keyboard “solo”. It has: great, swell, pedal"),
        (["--key", "c1"], "swell", "Nothing sounds there"),
        (["--key", "c1", "--seconds", "0"], "great", "lasts from"),
    ],
)
def test_what_cannot_be_played_is_refused_in_words(listen, said, keyboard, sentence):
    with pytest.raises(CommandError, match=sentence):
        listen(*said, keyboard=keyboard)


def test_a_place_that_cannot_be_written_is_named(listen, tmp_path):
    with pytest.raises(CommandError, match="cannot be written"):
        listen("--key", "c1", out=tmp_path)


def test_a_file_that_is_not_there_is_named(files, listen, tmp_path):
    (tmp_path / "drawn.json").unlink()

    with pytest.raises(CommandError, match=r"drawn\.json cannot be read"):
        listen("--key", "c1")


def test_a_file_that_is_no_text_is_named(files, listen, tmp_path):
    (tmp_path / "organ.json").write_bytes(b"\xff\xfe\xff")

    with pytest.raises(CommandError, match="not a text file"):
        listen("--key", "c1")
