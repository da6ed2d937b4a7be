"""Whatever is pasted, a reading or a sentence comes back, in time, and no line is lost."""

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from instruments.stoplist import Reading, StoplistError, read_stoplist

NOISE = "Gr8 / 2 2/3' (from) IV-V : 15.19 Oboe, zz; Sw to Gt 16 \t| x "
HOSTILE = {
    "noise of 200 kB": (NOISE * 4000)[:199_000],
    "noise in lines": (NOISE + "\n") * 3000,
    "noise, each line its own": "".join(f"{n} {NOISE}{n}\n" for n in range(999)),
    "one long word": "x" * 199_000,
    "figures alone": "8 " * 90_000,
    "brackets": "(" * 100_000,
    "a page with scripts": "<html><script>a = 'Oboe 8';</script><td>Oboe</td><td>8</td>\n" * 900,
    "ten thousand stops": "GREAT\n" + "Oboe 8\n" * 10_000,
    "commas": "GREAT\n" + "Oboe 8, " * 20_000,
    "mixed endings": "GREAT\r\nOboe 8\rFlute 4\n\n\u2028Oboe 4\x0bPrincipal 4",
    "dots": "GREAT\n" + "Oboe" + "." * 50_000 + "8",
    "romans": "I" * 60_000 + " " + "V-" * 20_000,
    "slashes": "1/" * 60_000,
    "spaces": "Oboe" + " " * 100_000 + "8",
    "gaps": "Oboe  8  " * 10_000,
    "tags never closed": "<td " * 40_000,
}  # fmt: skip
REFUSED = ["", " \n\t ", "\x00\x01\x02", "\x07" * 500, "y" * 200_001, "Dear all, see you at nine."]
WORDS = (
    "GREAT", "Swell", "I.", "Pedal:", "Oboe 8", "Mixtur 4f.", "15.19.22", "2 2/3'",
    "(from Great)", "Sw/Gt 16 8 4", "\n", "\r\n", "\t", ",", "Koppeln:", "II/I", "Tremulant",
    "C-g3", "§", "½", "[A]", "8", "ext.", "(ab c0)", "Zimbelstern", "a1 = 440 Hz", "|", "<b>",
    "&amp;", "c1: 12.15", "no. 3", "Couplers", "Manual",
)  # fmt: skip


def read(text: str) -> Reading | None:
    """Read a text; None where it is refused in a sentence."""
    try:
        return read_stoplist(text)
    except StoplistError as refused:
        return None if str(refused).endswith(".") else pytest.fail(str(refused))


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE.keys())
def test_hostile_text_is_read_or_refused_and_never_runs_away(text):
    started = time.process_time()

    read(text)
    # The aim is two seconds; traced for coverage on a busy machine it takes several times that.
    assert time.process_time() - started < 10


@pytest.mark.parametrize("text", REFUSED)
def test_text_without_stops_is_refused_in_a_sentence(text):
    assert read(text) is None


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=400))
def test_any_text_is_read_or_refused(text):
    read(text)


@settings(max_examples=250, deadline=None)
@given(st.lists(st.sampled_from(WORDS), max_size=40).map(" ".join))
def test_every_line_is_told_and_what_is_not_read_is_listed(text):
    reading = read(text)
    if reading is None:
        return

    spoken = [number for number, line in enumerate(text.splitlines(), 1) if line.strip()]
    unread = {one.line for one in reading.lines if one.read_as == "not read"}
    assert [one.line for one in reading.lines] == spoken
    assert unread <= {one.line for one in reading.unread}
