import json

from registrations.combination import Music
from registrations.tryout import tryout
from tests.builders import a_combination, an_organ

ORGAN = an_organ(couplers=["Swell to Great"], tremulants=["swell"])


def tried(*drawn):
    return tryout(ORGAN, a_combination(*drawn), Music())


def test_nothing_drawn_is_silent_keyboards_in_order_and_no_findings():
    assert tried() == {
        "keyboards": [
            {"id": "great", "sounds": False, "lengths": []},
            {"id": "swell", "sounds": False, "lengths": []},
            {"id": "pedal", "sounds": False, "lengths": []},
        ],
        "findings": [],
    }


def test_a_sounding_keyboard_tells_its_lengths_longest_first():
    great, *_ = tried("great/twelfth-2-2-3", "great/principal-4", "great/open-diapason-8")[
        "keyboards"
    ]

    assert great == {"id": "great", "sounds": True, "lengths": ["8", "4", "2 2/3"]}


def test_a_keyboard_that_no_hand_plays_still_tells_what_it_sounds():
    tried_out = tryout(ORGAN, a_combination("swell/oboe-8", right="great"), Music())

    assert tried_out["keyboards"][1]["sounds"] is True


def test_a_finding_is_told_with_its_evidence_and_remedies():
    (finding,) = tried("great/open-diapason-8", "great/twelfth-2-2-3")["findings"]

    assert finding["rule"] == "gap-below-mutation"
    assert finding["level"] == "advice"
    assert finding["remedies"][0] == {"draw": ["great/principal-4"], "put_in": []}
    assert finding["evidence"] == {
        "keyboards": ["great"],
        "stops": ["great/twelfth-2-2-3"],
        "couplers": [],
        "tremulants": [],
        "keys": ["C", "c4"],
        "lengths": ["2 2/3", "4"],
        "numbers": {"step_cents": 1901.955, "stand_out_db": 10.4},
    }


def test_a_finding_without_keys_has_none():
    findings = tried("swell-to-great")["findings"]

    assert [finding["evidence"]["keys"] for finding in findings] == [None, None]


def test_all_of_it_can_be_printed_as_json():
    told = tried("great/mixture-19-22-26", "swell-to-great")

    assert json.loads(json.dumps(told)) == told
