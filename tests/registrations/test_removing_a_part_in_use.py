from registrations.actions import save_registration
from tests.factories import InstrumentFactory, ItemFactory, a_change


def question(client, kind, part) -> str:
    return client.get(f"/parts/{kind}/{part.pk}/leaving/").content.decode()


def test_a_stop_that_nothing_draws_is_removed_without_warning(director_client):
    row = InstrumentFactory()

    page = question(director_client, "stops", row.stops.get(slug="great/trumpet-8"))

    assert "No registration uses it." in page


def test_a_stop_that_changes_draw_is_counted_and_each_change_named(director_client):
    item = ItemFactory(piece__title="O God, our help")
    changes = (
        a_change("great/trumpet-8", cue="Verse 1"),
        a_change("great/principal-4", cue="Verse 2"),
        a_change("great/trumpet-8", cue="Verse 3"),
    )
    save_registration(item, changes)

    trumpet = item.instrument.stops.get(slug="great/trumpet-8")
    page = question(director_client, "stops", trumpet)

    assert "2 changes use it" in page
    assert "O God, our help, Verse 3" in page
    assert "Verse 2" not in page


def test_the_same_stop_of_another_organ_is_not_counted(director_client):
    save_registration(ItemFactory(), (a_change("great/trumpet-8"),))
    other = InstrumentFactory()

    page = question(director_client, "stops", other.stops.get(slug="great/trumpet-8"))

    assert "No registration uses it." in page


def test_a_keyboard_says_which_changes_are_played_on_it(director_client):
    item = ItemFactory()
    save_registration(item, (a_change("great/trumpet-8", right="great"),))
    solo = item.instrument.keyboards.create(slug="solo", name="Solo", kind="manual", compass="C-g3")
    item.registration.changes.create(cue="Solo verse", right="solo", position=2)

    assert "1 change uses it" in question(director_client, "keyboards", solo)


def test_a_part_that_must_stay_says_why_instead(director_client):
    great = InstrumentFactory().keyboards.get(slug="great")

    page = question(director_client, "keyboards", great)

    assert "It still has 1 division and 2 couplers." in page
    assert "Remove it</button>" not in page


def test_lent_pipes_and_reversibles_are_mentioned(director_client):
    row = InstrumentFactory()
    bourdon = row.stops.get(slug="pedal/bourdon-16")
    row.stops.filter(slug="pedal/bass-flute-8").update(borrowed_from=bourdon.slug)
    row.pistons.create(slug="b", name="Bourdon out", kind="reversible", control=bourdon.slug)

    page = question(director_client, "stops", bourdon)

    assert "Its pipes are lent to Bass Flute 8" in page
    assert "Bourdon out" in page


def test_a_change_that_drew_a_removed_stop_says_so(director_client):
    item = ItemFactory()
    registration = save_registration(item, (a_change("great/trumpet-8"),))
    trumpet = item.instrument.stops.get(slug="great/trumpet-8")
    director_client.post(f"/parts/stops/{trumpet.pk}/remove/")

    page = director_client.get(registration.changes.first().get_absolute_url()).content.decode()

    assert "great/trumpet-8" in page


def test_asking_takes_few_queries_however_many_changes(director_client, django_assert_num_queries):
    item = ItemFactory()
    save_registration(item, (a_change("great/trumpet-8"),) * 12)
    trumpet = item.instrument.stops.get(slug="great/trumpet-8")

    with django_assert_num_queries(7):
        question(director_client, "stops", trumpet)


def test_an_organist_is_not_asked(organist_client):
    stop = InstrumentFactory().stops.first()

    assert organist_client.get(f"/parts/stops/{stop.pk}/leaving/").status_code == 403
