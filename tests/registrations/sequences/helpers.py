from registrations.checks.atcue import AtCue
from registrations.registration import Change
from tests.builders import a_combination


def a_change(*drawn, cue="Verse 1", music=None, note="", **hands):
    given = {} if music is None else {"music": music}
    return Change(cue, a_combination(*drawn, **hands), note=note, **given)


def findings(rule, organ, change, before=None, **given):
    """Give what one rule finds of a change after another."""
    return list(rule.check(AtCue(organ, change, before, **given)))
