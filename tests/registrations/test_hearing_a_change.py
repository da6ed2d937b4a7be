import io
import wave

import numpy as np
import pytest

from registrations.actions import save_registration
from registrations.combination import Combination, Hands
from registrations.models import Change
from registrations.spectrum import spectrum
from registrations.synthesis import HIGHEST_PEAK
from tests.builders import an_organ
from tests.factories import ItemFactory, a_change

HTMX = {"HX-Request": "true"}
DRAWN = ("great/open-diapason-8", "great/twelfth-2-2-3", "pedal/bourdon-16")
KEY = {"keyboard": "great", "chord": "key"}


@pytest.fixture
def change(db) -> Change:
    drawn = a_change(*DRAWN, feet="pedal")
    return save_registration(ItemFactory(), (drawn,)).changes.first()


def page(client, change, **more) -> str:
    return client.get(f"/changes/{change.pk}/sounding/", **more).content.decode()


def partials(client, change, **asked):
    return client.get(f"/changes/{change.pk}/partials.json", asked)


def test_the_page_shows_the_ladder_the_compass_and_their_words(organist_client, change):
    shown = page(organist_client, change)

    assert shown.count("<svg") == 1 + 1 + 2 + 3
    assert "Twelfth 2⅔′, stands out by" in shown
    assert "<td>missing</td>" in shown
    assert "<b>C to g1</b>: 16′" in shown


def test_htmx_gets_the_pictures_alone(organist_client, change):
    shown = page(organist_client, change, headers=HTMX)

    assert shown.lstrip().startswith('<div id="pictures"')


def test_nothing_drawn_is_said_in_a_sentence(organist_client, db):
    silent = save_registration(ItemFactory(), (a_change(),)).changes.first()

    assert "Nothing of a pitch sounds." in page(organist_client, silent)


def test_the_editor_leads_to_it_without_scripts(director_client, change):
    shown = director_client.get(f"/changes/{change.pk}/").content.decode()

    assert f'<a href="/changes/{change.pk}/sounding/">' in shown


def test_the_partials_are_those_of_the_spectrum(organist_client, change):
    answer = partials(organist_client, change, **KEY).json()
    sound = spectrum(an_organ(), Combination(frozenset(DRAWN), Hands("great")), "great", 24)

    assert answer["plays"] == "c1 on the Great"
    heard = sorted(hertz for hertz, _ in answer["partials"])
    assert heard == pytest.approx(sound.frequencies, abs=0.001)


def test_the_partials_together_keep_to_the_limit(organist_client, change):
    answer = partials(organist_client, change, keyboard="great", chord="chord").json()

    assert answer["plays"] == "c1, e1, g1 and c2 on the Great"
    assert 0 < sum(amplitude for _, amplitude in answer["partials"]) <= HIGHEST_PEAK + 0.001


@pytest.mark.parametrize(
    "asked",
    [
        {},
        {"keyboard": "swell", "chord": "key"},
        {"keyboard": "pedal", "chord": "chord"},
        {"keyboard": "great", "chord": "cluster"},
    ],
)
def test_what_is_not_offered_is_not_there(organist_client, change, asked):
    assert partials(organist_client, change, **asked).status_code == 404


def test_in_the_sound_file_the_twelfth_joins_the_third_harmonic(organist_client, change):
    answer = organist_client.get(f"/changes/{change.pk}/sketch.wav", KEY)
    with wave.open(io.BytesIO(answer.content)) as file:
        rate, numbers = file.getframerate(), np.frombuffer(file.readframes(10**6), "<i2")

    strengths = np.abs(np.fft.rfft(numbers))
    strongest = strengths.argmax() * rate / numbers.size
    assert answer["Content-Type"] == "audio/wav"
    assert strongest == pytest.approx(3 * 261.6, abs=0.6)


@pytest.mark.parametrize("address", ["sounding/", "partials.json", "sketch.wav"])
def test_a_printer_hears_nothing(printer_client, change, address):
    assert printer_client.get(f"/changes/{change.pk}/{address}", KEY).status_code == 403


def test_hearing_asks_the_database_a_fixed_number_of_times(
    organist_client, change, django_assert_num_queries
):
    with django_assert_num_queries(15):
        page(organist_client, change)
    with django_assert_num_queries(15):
        partials(organist_client, change, **KEY)
