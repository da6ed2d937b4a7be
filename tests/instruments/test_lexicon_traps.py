"""Names that mislead, each with the source that says so.

Marks: "from memory", "common practice, no source", or the work in which it was read. Miller is
G. L. Miller, The Recent Revolution in Organ Building, 2nd ed. 1913.
"""

import pytest

from instruments.lexicon import find_name
from instruments.pitch import is_octave
from instruments.tone import Construction, Family


def kind(text, language=""):
    entry = find_name(text, language).entry
    return entry.family, entry.construction


def lengths(text, language="", *, pedal=False):
    return find_name(text, language, pedal).entry.lengths


def traps(text, language=""):
    return find_name(text, language).entry.traps


def test_a_stopped_diapason_is_a_stopped_flute():
    """Miller; P. Williams in Grove ("Gedackt")."""
    assert kind("Stopped Diapason") == (Family.FLUTE, Construction.STOPPED)


@pytest.mark.parametrize("text", ["Lieblich Gedact", "Lieblich Gedackt", "Lieblich Gedeckt"])
def test_gedact_gedackt_and_gedeckt_are_one_stopped_flute(text):
    """Common practice, no source."""
    assert kind(text) == (Family.FLUTE, Construction.STOPPED)


def test_the_voce_umana_is_a_beating_principal():
    """Greifenberger Institut, page on compound stops."""
    assert kind("Voce umana", "it") == (Family.PRINCIPAL, Construction.UNDULATING)
    assert lengths("Voce umana", "it") == (8,)


@pytest.mark.parametrize("text", ["Vox Humana", "Voix humaine", "Voz humana"])
def test_the_vox_humana_is_a_short_reed(text):
    """Miller."""
    assert kind(text) == (Family.REED, Construction.SHORT)


@pytest.mark.parametrize("text", ["Voix Celeste", "Violes Celestes", "Unda Maris"])
def test_celestes_beat_and_begin_at_tenor_c(text):
    """Miller ("Tenor C")."""
    entry = find_name(text).entry

    assert (entry.construction, entry.from_key) == (Construction.UNDULATING, 12)


def test_a_french_bourdon_is_8_and_a_pedal_one_16():
    """Organ Historical Society, French stop list; Miller."""
    assert lengths("Bourdon", "fr")[0] == 8
    assert lengths("Bourdon", "fr", pedal=True) == (16,)
    assert lengths("Bourdon", "en")[0] == 16


def test_an_english_principal_is_4_and_on_the_pedals_8():
    """Miller."""
    assert lengths("Principal", "en") == (4,)
    assert lengths("Principal", "en", pedal=True) == (8,)


def test_a_german_principal_is_that_of_its_division():
    """Jehmlich Orgelbau, Freiberg 1714: 8 and 4 on the manuals, 16 on the pedals."""
    assert {4, 8} <= set(lengths("Principal", "de"))
    assert lengths("Principal", "de", pedal=True)[0] == 16


def test_a_french_prestant_is_4_and_a_dutch_one_of_any_length():
    """Mersenne 1636, organ, prop. XXXI; blockwerk.neocities.org."""
    assert lengths("Prestant", "fr") == (4,)
    assert {16, 8, 4} <= set(lengths("Prestant", "nl"))


def test_a_french_doublette_is_one_rank_and_an_english_one_two():
    """Mersenne 1636, organ, prop. XXXI; Miller."""
    assert lengths("Doublette", "fr") == (2,)
    assert find_name("Doublette", "en").entry.counts == (15, 22)


def test_a_sesquialtera_is_12_17_and_warns_of_the_other_meaning():
    """S. Chace, list message 2000; Greifenberger Institut."""
    assert find_name("Sesquialtera", "en").entry.counts == (12, 17)
    assert "17.19.22" in traps("Sesquialtera", "en")


@pytest.mark.parametrize("text", ["Cornopean", "Clarinet", "Cor Anglais", "Horn"])
def test_these_horns_are_reeds(text):
    """Miller."""
    assert kind(text)[0] is Family.REED


@pytest.mark.parametrize("text", ["Cor de nuit", "Nachthorn", "Clarinet Flute", "Gemshorn"])
def test_these_horns_are_not(text):
    """Miller; common practice, no source."""
    assert kind(text)[0] is not Family.REED


@pytest.mark.parametrize(
    ("text", "family"),
    [("Dulciana", "string"), ("Dolce", "string"), ("Dolcan", "string"), ("Dulciaan", "reed"),
     ("Dulzian", "reed")],
)  # fmt: skip
def test_dulcianas_and_dulzians_are_not_confused(text, family):
    """P. Williams in Grove: the coincidence of the names "has led to much confusion"."""
    assert kind(text)[0] == family


def test_a_spanish_violon_is_a_stopped_flute_and_a_violone_a_string_at_16():
    """From memory."""
    assert kind("Violón", "es") == (Family.FLUTE, Construction.STOPPED)
    assert kind("Violone")[0] is Family.STRING
    assert lengths("Violone") == (16,)


@pytest.mark.parametrize("text", ["Double Keraulophon", "Contra Keraulophon", "Sub Keraulophon"])
def test_double_contra_and_sub_mean_an_octave_below(text):
    """Essex Organ Museum, "The Organ", part three."""
    assert lengths(text) == (16,)


def test_a_diaphone_is_of_its_own_kind():
    """Miller; P. Williams in Grove."""
    assert kind("Diaphone")[1] is Construction.OTHER
    assert lengths("Diaphone") == (16, 32)


@pytest.mark.parametrize("text", ["Carillon", "Glockenspiel"])
def test_bells_or_a_compound_is_a_question_to_ask(text):
    """Common practice, no source."""
    assert "compound" in traps(text)


def test_a_super_octave_may_be_a_coupler():
    """Common practice, no source; E. J. Hopkins in Grove on the octave coupler."""
    assert lengths("Super Octave") == (2,)
    assert "coupler" in traps("Super Octave")


def test_a_schwebung_may_be_a_tremulant():
    """Jehmlich Orgelbau, Freiberg 1714."""
    assert kind("Schwebung")[1] is Construction.UNDULATING
    assert "tremulant" in traps("Schwebung")


def test_an_orchestral_oboe_is_for_solos_and_an_oboe_for_every_day():
    """Miller."""
    orchestral, everyday = find_name("Orchestral Oboe").entry, find_name("Oboe").entry

    assert "solo" in orchestral.what_for
    assert "everyday" in everyday.what_for


@pytest.mark.parametrize("text", ["Salicional", "Dulciana"])
def test_mild_stops_are_strings_by_family_and_soft_by_use(text):
    """Miller groups them under strings."""
    assert kind(text)[0] is Family.STRING
    assert {"Mild", "quiet"} & set(find_name(text).entry.what_for.split())


def test_the_stop_printed_in_place_of_a_second_principal_is_a_4_too():
    """Jehmlich prints Principal 4 twice where the Greifenberger Institut has Rohrflöte 4."""
    assert 4 in lengths("Principal", "de")
    assert 4 in lengths("Rohrflöte", "de")


@pytest.mark.parametrize("text", ["Cor Anglais (free)", "Voix Celeste (Tenor C)"])
def test_a_note_in_brackets_is_no_part_of_the_name(text):
    """Miller, the Worcester list."""
    assert find_name(text).exact


def test_a_vox_angelica_may_be_one_rank_or_a_celeste():
    """Miller shows both."""
    assert "celeste" in traps("Vox Angelica")


@pytest.mark.parametrize(("text", "at_octave"), [("Fifteenth", True), ("Flute", True),
                                                 ("Twelfth", False), ("Quint", False)])  # fmt: skip
def test_what_a_mutation_is_follows_from_the_length(text, at_octave):
    """Essex Organ Museum counts every 4 and 2 as one; modern usage only the off-unison ranks."""
    assert all(is_octave(length) is at_octave for length in lengths(text, "en"))
