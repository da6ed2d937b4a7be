import pytest

from instruments.actions import save_organ
from instruments.consoles import Panel, Piston, PistonKind, Place, Touch
from instruments.jamb import usual_places
from instruments.queries import load_organ
from tests.builders import an_organ
from tests.factories import InstrumentFactory
from tests.instruments.test_consolefile import CONSOLE


@pytest.fixture
def row(db):
    return InstrumentFactory()


def with_console():
    return type(an_organ())(
        **{name: getattr(an_organ(), name) for name in an_organ().__slots__}
        | {"console": CONSOLE, "notes": "Wind 3 inches."}
    )


def add_piston(client, row, **facts):
    piston = {"name": "General", "kind": "general", "touch": "thumb", "several": 1}
    return client.post(f"/organs/{row.pk}/pistons/add/", {**piston, **facts})


def place(client, row, **controls):
    words = ("panel", "column", "row")
    data = {
        f"{word}:{control}": fact
        for control, facts in controls.items()
        for word, fact in zip(words, facts, strict=True)
    }
    return client.post(f"/organs/{row.pk}/jamb/place/", data)


def test_a_stored_console_comes_back_equal(db):
    assert load_organ(save_organ(with_console()).pk) == with_console()


def test_memory_and_sequencer_are_told(director_client, row):
    facts = {"knobs_move": "no", "levels": "8", "sequencer": "on"}
    director_client.post(f"/organs/{row.pk}/console/change/", facts)

    console = load_organ(row.pk).console
    assert (console.knobs_move, console.levels, console.sequencer) == (False, 8, True)
    page = director_client.get(f"/organs/{row.pk}/console/facts/").content.decode()
    assert '<option value="no" selected>' in page


def test_what_nobody_has_said_stays_unsaid(director_client, row):
    director_client.post(f"/organs/{row.pk}/console/change/", {"knobs_move": "", "levels": "0"})

    assert load_organ(row.pk).console.knobs_move is None
    assert (
        director_client.post(f"/organs/{row.pk}/console/change/", {"levels": "-1"}).status_code
        == 422
    )


def test_eight_generals_are_added_at_once(director_client, row):
    add_piston(director_client, row, several=8, touch="thumb and toe")

    pistons = load_organ(row.pk).console.pistons
    assert pistons[0] == Piston("general-1", "General 1", touch=Touch.BOTH)
    assert [one.name for one in pistons][-1] == "General 8"


def test_divisionals_and_reversibles_name_what_they_move(director_client, row):
    great = row.divisions.get(slug="great")
    add_piston(director_client, row, name="Great 1", kind="divisional", division=great.pk)
    add_piston(director_client, row, name="G-P", kind="reversible", control="great-to-pedal")

    divisional, reversible = load_organ(row.pk).console.pistons
    assert (divisional.kind, divisional.division) == (PistonKind.DIVISIONAL, "great")
    assert (reversible.kind, reversible.control) == (PistonKind.REVERSIBLE, "great-to-pedal")


@pytest.mark.parametrize(
    "wrong",
    [{"kind": "divisional"}, {"control": "great-to-pedal"}, {"several": 99}, {"name": ""}],
)
def test_a_piston_that_cannot_be_is_refused_in_words(director_client, row, wrong):
    answer = add_piston(director_client, row, **wrong)

    assert answer.status_code == 422
    assert 'role="alert"' in answer.content.decode()


def test_a_piston_is_changed_and_removed(director_client, row):
    add_piston(director_client, row)
    piston = row.pistons.get()
    facts = {"name": "Tutti", "kind": "general", "touch": "toe"}
    director_client.post(f"/pistons/{piston.pk}/change/", facts)

    assert load_organ(row.pk).console.pistons == (Piston("general", "Tutti", touch=Touch.TOE),)
    assert director_client.get(f"/pistons/{piston.pk}/facts/").status_code == 200
    director_client.post(f"/parts/pistons/{piston.pk}/remove/")
    assert load_organ(row.pk).console.pistons == ()


def test_a_piston_without_a_name_is_not_kept(director_client, row):
    add_piston(director_client, row)
    facts = {"name": "", "kind": "general", "touch": "toe"}

    answer = director_client.post(f"/pistons/{row.pistons.get().pk}/change/", facts)

    assert answer.status_code == 422


def test_controls_get_their_places(director_client, row):
    spots = {"great/principal-4": ("right", 1, 2), "swell-to-great": ("rail", 1, 1)}
    place(director_client, row, **spots)

    assert load_organ(row.pk).console.places == {
        Place("great/principal-4", Panel.RIGHT, 1, 2),
        Place("swell-to-great", Panel.RAIL, 1, 1),
    }
    page = director_client.get(f"/organs/{row.pk}/jamb/").content.decode()
    assert "Right jamb" in page
    assert "17 controls have no place yet" in page


def test_a_control_that_the_form_does_not_name_keeps_its_place(director_client, row):
    place(director_client, row, **{"great/principal-4": ("right", 1, 2)})
    place(director_client, row, **{"great/trumpet-8": ("right", 1, 3)})

    assert len(load_organ(row.pk).console.places) == 2


def test_a_place_is_taken_away_by_emptying_it(director_client, row):
    place(director_client, row, **{"great/principal-4": ("right", 1, 2)})
    place(director_client, row, **{"great/principal-4": ("", "", "")})

    assert load_organ(row.pk).console.places == frozenset()


@pytest.mark.parametrize(
    ("spot", "sentence"),
    [
        (("right", "", 2), "Give the panel, the column and the row"),
        (("right", "one", 2), "Enter a whole number"),
        (("right", 1, 1), "Principal 4′ (Great) stands there"),
    ],
)
def test_a_place_that_cannot_be_is_refused_and_nothing_is_lost(
    director_client, row, spot, sentence
):
    spots = {"great/principal-4": ("right", 1, 1), "great/trumpet-8": spot}

    answer = place(director_client, row, **spots)

    assert answer.status_code == 422
    assert sentence in answer.content.decode()
    assert load_organ(row.pk).console.places == frozenset()


def test_a_usual_order_is_offered_once(director_client, row):
    way = f"/organs/{row.pk}/jamb/usual/"
    director_client.post(way)
    assert load_organ(row.pk).console.places == usual_places(an_organ())

    again = director_client.post(way, follow=True).content.decode()
    assert "Nothing was changed" in again


def test_a_removed_control_leaves_neither_place_nor_reversible(director_client, row):
    add_piston(director_client, row, name="G-P", kind="reversible", control="great-to-pedal")
    director_client.post(f"/organs/{row.pk}/jamb/usual/")
    coupler = row.couplers.get(slug="great-to-pedal")
    director_client.post(f"/parts/couplers/{coupler.pk}/remove/")

    console = load_organ(row.pk).console
    assert console.pistons == ()
    assert console.place("great-to-pedal") is None


def test_the_page_of_an_organ_shows_console_notes_and_mixtures(organist_client):
    row = save_organ(with_console())

    page = organist_client.get(f"/organs/{row.pk}/").content.decode()

    for word in ("8 memory levels with a sequencer", "Great to Pedal (Couplers) in and out"):
        assert word in page
    assert "Wind 3 inches." in page
    assert "Right jamb" in page
    assert '<svg class="breaks"' in page


def test_the_page_of_an_organ_takes_as_many_queries_as_the_organ(
    organist_client, row, django_assert_num_queries
):
    with django_assert_num_queries(11):
        organist_client.get(f"/organs/{row.pk}/")
