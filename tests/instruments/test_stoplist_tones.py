"""A tone in words, and back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from instruments.stoplist.tones import read_tone, tone_words
from instruments.tone import Construction, Family
from tests.builders import a_stop


@given(st.sampled_from(Family), st.sampled_from(Construction))
def test_a_tone_reads_back_as_it_was(family, construction):
    stop = a_stop("Oboe 8", family=family, construction=construction)

    assert read_tone(tone_words(stop)) == (family, construction)


def test_pipes_are_open_where_nothing_is_said():
    assert read_tone("tone: flute") == (Family.FLUTE, Construction.OPEN)


@pytest.mark.parametrize("remark", ["tone: brown", "bass", "tone: flute, bent", ""])
def test_other_remarks_tell_no_tone(remark):
    assert read_tone(remark) is None
