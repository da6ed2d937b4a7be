from registrations.checks.scene import Scene
from registrations.combination import Music
from tests.builders import a_combination


def findings(rule, organ, *drawn, music=None, **hands):
    """Give what one rule finds; bare names of stops are the Great's."""
    ids = [_full(name, organ) for name in drawn]
    return list(rule.check(Scene(organ, a_combination(*ids, **hands), music or Music())))


def _full(name, organ):
    return name if name in organ.control_ids() else f"great/{name}"
