import json

import pytest
from django.core.management import CommandError, call_command

from instruments.organfile import organ_text
from tests.builders import an_organ


@pytest.fixture
def files(tmp_path):
    def write(combination: object) -> list[str]:
        (tmp_path / "organ.json").write_text(organ_text(an_organ()), encoding="utf-8")
        (tmp_path / "drawn.json").write_text(json.dumps(combination), encoding="utf-8")
        return [str(tmp_path / "organ.json"), str(tmp_path / "drawn.json")]

    return write


def test_json_says_what_sounds_and_what_is_found(files, capsys):
    call_command(
        "tryout", *files({"drawn": ["swell/stopped-diapason-8", "swell-to-great"]}), "--json"
    )

    told = json.loads(capsys.readouterr().out)
    assert told["keyboards"][0] == {"id": "great", "sounds": True, "lengths": ["8"]}
    assert told["findings"] == []


def test_words_name_the_finding_and_its_remedies(files, capsys):
    call_command("tryout", *files({"drawn": ["great/open-diapason-8", "swell-to-great"]}))

    told = capsys.readouterr().out
    assert "[silent-coupler]" in told
    assert "put in Swell to Great" in told


def test_nothing_to_say_is_said(files, capsys):
    call_command("tryout", *files({"drawn": ["great/open-diapason-8"]}))

    assert "Nothing to say against it." in capsys.readouterr().out


@pytest.mark.parametrize(
    ("combination", "sentence"),
    [
        ({"drawn": ["great/nothing"]}, "no “great/nothing” to draw"),
        (["great/open-diapason-8"], "needs"),
        ({"drawn": [], "hands": {"nose": "great"}}, "“nose”"),
    ],
)
def test_a_combination_that_cannot_be_is_refused_in_words(files, combination, sentence):
    with pytest.raises(CommandError, match=sentence):
        call_command("tryout", *files(combination))


def test_files_that_are_not_there_are_named(tmp_path):
    with pytest.raises(CommandError, match=r"none\.json cannot be read"):
        call_command("tryout", str(tmp_path / "none.json"), str(tmp_path / "none.json"))
