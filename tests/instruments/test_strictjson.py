import pytest

from instruments.strictjson import JSONTextError, read_json


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ('{"a": {"a": 1}}', {"a": {"a": 1}}),
        ("[1, 2.5, null]", [1, 2.5, None]),
        ('\ufeff{"byte": "order mark"}', {"byte": "order mark"}),
    ],
)
def test_json_is_read(text, value):
    assert read_json(text) == value


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "This is not JSON: line 1, column 1: Expecting value."),
        ('{\n"a": }', "This is not JSON: line 2, column 6: Expecting value."),
        ("[NaN]", "This JSON cannot be used: NaN is not a number."),
        ("[-Infinity]", "This JSON cannot be used: -Infinity is not a number."),
        ('{"a": 1, "a": 2}', "This JSON cannot be used: “a” is given twice in one place."),
        ("[" * 100_000, "This JSON is nested too deep to read."),
    ],
)
def test_what_cannot_be_read_is_told_in_a_sentence(text, sentence):
    with pytest.raises(JSONTextError) as refused:
        read_json(text)

    assert str(refused.value) == sentence


def test_a_number_of_ten_thousand_digits_is_refused():
    with pytest.raises(JSONTextError, match="cannot be used"):
        read_json("9" * 10_000)
