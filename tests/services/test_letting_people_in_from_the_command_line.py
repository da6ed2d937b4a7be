import re

import pytest
from django.core.management import CommandError, call_command
from django.test import Client

from tests.factories import PersonFactory


def test_somebody_is_added_and_let_in(db, capsys):
    call_command("addperson", "Dora Vance", "director", base="http://loft:8000")

    path = re.search(r"http://loft:8000(\S+)", capsys.readouterr().out)[1]
    assert "Dora Vance" in Client().get(path).content.decode()


def test_the_first_director_is_let_in_where_nobody_is_named(db, capsys):
    PersonFactory(name="Owen Reed")
    PersonFactory(name="Dora Vance", role="director")
    call_command("signinlink")

    assert "Dora Vance (director)" in capsys.readouterr().out


def test_a_name_nobody_has_is_answered_with_those_there_are(db):
    PersonFactory(name="Owen Reed")

    with pytest.raises(CommandError, match="There is: Owen Reed"):
        call_command("signinlink", "Nobody")


def test_an_empty_book_says_how_to_begin(db):
    with pytest.raises(CommandError, match="see addperson"):
        call_command("signinlink")
