import pytest

from instruments.temperament import find_temperament
from tests.reference.tables import rows


def offsets_from_a(name: str) -> list[float]:
    """Give what a tuner sets: cents from equal temperament, C to B, with A at 0."""
    steps = find_temperament(name).steps
    return [cents - 100 * step - (steps[9] - 900) for step, cents in enumerate(steps)]


@pytest.mark.parametrize(
    ("table", "within"), [("sanderson_1998.txt", 0.051), ("tunable.txt", 0.0051)]
)
def test_a_temperament_is_set_as_the_tuners_table_says(table, within):
    for name, *offsets in rows(table):
        assert offsets_from_a(name) == pytest.approx([float(one) for one in offsets], abs=within)


def test_a_temperament_has_the_steps_of_the_scala_archive():
    for name, *cents in rows("scala_archive.txt"):
        steps = find_temperament(name).steps

        assert steps == pytest.approx([float(one) for one in cents], abs=0.00051)
