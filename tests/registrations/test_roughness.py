from dataclasses import replace

import pytest

from instruments.spectra import MODEL, Tone
from registrations.roughness import ROUNDED, chord_roughness, roughness, sethares
from registrations.spectrum import spectrum
from tests.builders import a_combination, a_stop, an_organ

C1, E1, F1, G1, C2 = 24, 28, 29, 31, 36
ORGAN = an_organ()
OPEN = "great/open-diapason-8"
CHORUS = an_organ(great=["Open 8", "Principal 4", "Twelfth 2 2/3", "Fifteenth 2", "Tierce 1 3/5"])
FLUES = ("great/open-8", "great/principal-4", "great/twelfth-2-2-3", "great/fifteenth-2")


def chord(*keys, drawn=(OPEN,), organ=ORGAN, **given):
    return chord_roughness(organ, a_combination(*drawn), "great", keys, **given)


def test_silence_is_smooth():
    assert chord(C1, E1, drawn=()) == 0


def test_one_partial_is_smooth():
    plain = replace(MODEL, tones=tuple((kind, Tone((0.0,), 0.0)) for kind, _ in MODEL.tones))

    assert chord(C1, model=plain) == 0


def test_the_order_of_partials_does_not_matter():
    assert sethares([500, 440, 480], [1, 2, 3]) == sethares([440, 480, 500], [2, 3, 1])


def test_equal_partials_do_not_grate():
    assert sethares([440, 440], [1, 1]) == 0


def test_more_of_the_same_stop_is_no_rougher():
    organ = an_organ(great=["Diapason 8", a_stop("Second Diapason 8")])
    one, both = ("great/diapason-8",), tuple(organ.control_ids())

    assert chord(C1, E1, organ=organ, drawn=both) == pytest.approx(
        chord(C1, E1, organ=organ, drawn=one)
    )


def test_a_fifth_is_smoother_than_a_third_and_a_semitone_roughest():
    fifth, third, semitone = chord(C1, G1), chord(C1, E1), chord(E1, F1)

    assert fifth < third < semitone


def test_a_low_third_is_rougher_than_a_high_one():
    assert chord(C1 - 12, E1 - 12) > chord(C1, E1) > chord(C2, E1 + 12)


def test_flutes_are_smoother_than_trumpets():
    trumpets = chord(C1, E1, drawn=["great/trumpet-8"])
    flutes = chord_roughness(ORGAN, a_combination("swell/flute-4"), "swell", (C1, E1))

    assert flutes < trumpets


def test_a_chorus_is_smoother_on_a_pure_third_than_on_an_equal_one():
    meantone = replace(CHORUS, temperament="quarter-comma meantone")

    assert chord(C1, E1, organ=meantone, drawn=FLUES) < chord(C1, E1, organ=CHORUS, drawn=FLUES)


def test_a_tierce_roughens_a_minor_third_more_than_a_major_one():
    minor, major = (
        chord(C1, third, organ=CHORUS, drawn=(*FLUES, "great/tierce-1-3-5"))
        / chord(C1, third, organ=CHORUS, drawn=FLUES)
        for third in (C1 + 3, E1)
    )

    assert minor > major > 1


def test_other_constants_can_be_chosen():
    sound = spectrum(ORGAN, a_combination(OPEN), "great", C1, E1)

    assert roughness(sound, ROUNDED) == chord(C1, E1, curve=ROUNDED)
    assert roughness(sound, ROUNDED) != roughness(sound)
