import json
from fractions import Fraction

import pytest
from hypothesis import given
from jsonschema import Draft202012Validator

from instruments.organ import Coupler, Coupling
from instruments.organfile import (
    _SCHEMA,
    OrganFileError,
    organ_from_dict,
    organ_text,
    organ_to_dict,
    parse_organ,
)
from instruments.tone import Construction
from tests.builders import an_organ
from tests.instruments.strategies import organs

SMALL = {
    "format": "loftbook-organ",
    "version": 1,
    "name": "Chapel",
    "keyboards": [{"id": "manual", "name": "Manual", "kind": "manual", "compass": "C-f3"}],
    "divisions": [
        {
            "id": "great",
            "name": "Great",
            "keyboard": "manual",
            "stops": [{"id": "mixture", "name": "Mixture", "family": "principal"}],
        }
    ],
}


def changed(place: str, value: object) -> dict:
    """Give SMALL with one value changed: ``divisions.0.stops.0.length``."""
    data = json.loads(json.dumps(SMALL))
    *way, last = [int(step) if step.isdigit() else step for step in place.split(".")]
    inner = data
    for step in way:
        inner = inner[step]
    inner[last] = value
    return data


def refusal(data: object) -> str:
    with pytest.raises(OrganFileError) as refused:
        organ_from_dict(data)
    return str(refused.value)


@given(organs())
def test_an_organ_is_read_as_it_was_written(organ):
    text = organ_text(organ)

    assert parse_organ(text) == organ
    assert organ_text(parse_organ(text)) == text


@given(organs())
def test_every_organ_file_is_text_that_a_disk_takes(organ):
    assert organ_text(organ).encode().decode() == organ_text(organ)


def test_the_schema_is_a_schema():
    Draft202012Validator.check_schema(json.loads(_SCHEMA.read_text(encoding="utf-8")))


def test_what_a_small_file_leaves_out_has_its_usual_value():
    organ = organ_from_dict(SMALL)
    (_, mixture), *_ = organ.stops()

    assert (organ.pitch_hz, organ.temperament, organ.coupling) == (440, "equal", Coupling.DIRECT)
    assert (mixture.construction, mixture.ranks, mixture.length) == (Construction.OPEN, 1, None)


def test_a_mixture_has_as_many_ranks_as_its_widest_zone():
    zones = [{"from": "c", "lengths": ["2", "1 1/3", "1"]}, {"from": "C", "lengths": ["1", "2/3"]}]
    data = changed("divisions.0.stops.0.composition", zones)

    (_, mixture), *_ = organ_from_dict(data).stops()

    assert mixture.ranks == 3
    assert mixture.composition[0].lengths == (Fraction(1), Fraction(2, 3))


@pytest.mark.parametrize(("source", "target"), [("great", "manual"), ("manual", "great")])
def test_a_coupler_may_name_a_keyboard_by_its_division_and_the_reverse(source, target):
    data = changed("couplers", [{"id": "x", "name": "Octave", "from": source, "to": target}])

    assert organ_from_dict(data).couplers == (Coupler("x", "Octave", "great", "manual"),)


def test_a_coupler_to_a_floating_division_leads_nowhere():
    data = changed("couplers", [{"id": "x", "name": "X", "from": "echo", "to": "echo"}])
    data["divisions"].append({"id": "echo", "name": "Echo", "keyboard": None, "stops": []})

    assert refusal(data) == "coupler x: to names “echo”, which this organ does not have."


@pytest.mark.parametrize(
    ("place", "value", "sentence"),
    [
        ("version", 2, "version: 1 was expected"),
        ("divisions.0.stops.0.family", "brass", "divisions[0].stops[0].family: 'brass' is not one"),
        (
            "divisions.0.stops.0.length",
            "8 foot",
            "divisions[0].stops[0].length: “8 foot” does not fit. Write a length in feet like 8,",
        ),
        ("divisions.0.stops.0.length", "0", "stop mixture: “0” is not a length an organ pipe can"),
        ("divisions.0.stops.0.length", 8, "divisions[0].stops[0].length: 8 is not of type"),
        ("divisions.0.stops.0.compass", "C-h", "stop mixture: “h” is not a key."),
        ("keyboards.0.compass", "g-C", "keyboard manual: “g-C” is not a compass"),
        ("name", "St\nMary", "name: “St\nMary” does not fit. A name is on one line"),
        ("name", "St Mary\n", "name: “St Mary\n” does not fit. A name is on one line"),
        ("name", "\ud800", "name: “\ud800” does not fit."),
        ("keyboards.0.id", "a b", "keyboards[0].id: “a b” does not fit. An id has letters"),
        ("colour", "red", "The file: Additional properties are not allowed ('colour'"),
    ],
)
def test_a_refusal_says_where_and_what(place, value, sentence):
    assert refusal(changed(place, value)).startswith(sentence)


@pytest.mark.parametrize("data", [None, [], "organ", 1])
def test_what_is_no_object_is_refused(data):
    assert refusal(data).startswith("The file: ")


def test_two_zones_from_one_key_are_refused_with_the_stop():
    zones = [{"from": "c", "lengths": ["2"]}, {"from": "c", "lengths": ["1"]}]

    sentence = refusal(changed("divisions.0.stops.0.composition", zones))

    assert sentence == "stop mixture: Two zones begin at c."


@pytest.mark.parametrize("text", ["", "organ", '{"a": 1, "a": 2}', '{"pitch_hz": NaN}'])
def test_what_is_no_json_is_refused(text):
    with pytest.raises(OrganFileError, match="JSON"):
        parse_organ(text)


def test_a_file_nested_almost_too_deep_is_refused_too():
    text = "[" * 900 + "]" * 900

    with pytest.raises(OrganFileError):
        parse_organ(text)


def test_the_dictionary_and_the_text_agree():
    organ = an_organ()

    assert json.loads(organ_text(organ)) == organ_to_dict(organ)
