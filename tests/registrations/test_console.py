from registrations.console import steps
from services.order import Piece
from tests.registrations.sheets import a_registration, a_service, an_item

HYMN, VOLUNTARY = an_item(1), an_item(2, piece=Piece("Trumpet Voluntary"))


def test_a_service_without_items_has_no_steps():
    assert steps(a_service(), {}) == ()


def test_an_item_without_a_registration_is_a_step_of_its_own():
    (step,) = steps(a_service(VOLUNTARY), {})

    assert step.block is None
    assert step.begins
    assert step.name == "Trumpet Voluntary"


def test_each_change_is_a_step_and_the_first_begins_the_item():
    registration = a_registration(("great/principal-4",), (), cue="Verse")

    first, second = steps(a_service(HYMN), {1: registration})

    assert [first.begins, second.begins] == [True, False]
    assert [first.name, second.name] == ["Love divine, all loves excelling", "Verse!"]


def test_items_follow_in_the_order_of_the_service():
    registrations = {1: a_registration((), ()), 2: a_registration(())}

    found = steps(a_service(VOLUNTARY, HYMN), registrations)

    assert [step.sheet.title for step in found] == [
        "Trumpet Voluntary",
        "Love divine, all loves excelling",
        "Love divine, all loves excelling",
    ]
