from instruments.compass import compass_name, compass_of_size, parse_compass
from tests.reference.tables import replay


@replay("printed ours notes", "miller_1913.txt")
def test_a_compass_has_the_notes_that_miller_counts(printed, ours, notes):
    assert parse_compass(ours) == compass_of_size(int(notes))


@replay("keyboard compass notes", "sandstein_freiberg.txt")
def test_a_short_octave_has_the_notes_of_the_catalogue(keyboard, compass, notes):
    assert len(parse_compass(compass)) == int(notes)


@replay("compass notes", "customary_compasses.txt")
def test_a_customary_compass_is_known_by_its_size(compass, notes):
    assert compass_name(compass_of_size(int(notes))) == compass
    assert len(parse_compass(compass)) == int(notes)
