"""More controls move at a cue than two hands can.

Why it matters: while the music goes on each knob costs a moment, and a hand that is away from the
keys. What does not fit is drawn late or not at all. Set it earlier, in several steps; let a
registrant draw it; or find a change that needs less. Before the music begins there is time.
"""

import re
from collections.abc import Iterator

from instruments.consoles import PistonKind
from instruments.organ import Organ
from registrations.checks.atcue import AtCue
from registrations.checks.findings import Evidence, Finding, Level, Subject
from registrations.checks.sources import COMMON_PRACTICE
from registrations.registration import moves

NAME, LEVEL, SUBJECT = "too-many-moves", Level.ADVICE, Subject.CHANGES
SOURCES = (COMMON_PRACTICE,)
EXAMPLE = "From 8 and 4 to the full chorus of two manuals between two bars: eleven knobs"

#: How stop lists name what moves several controls at once.
_AIDS = re.compile(r"piston|combination|kombination|combinaison|sequencer|setzer", re.IGNORECASE)
_REVERSIBLE = re.compile(r"reversible", re.IGNORECASE)


def check(at: AtCue) -> Iterator[Finding]:
    """Find a change with more moves by hand than fit; which pistons are set is not known yet.

    Where the console has pistons or a sequencer, one press may do it, and nothing is said.
    """
    if at.before is None or has_aids(at.organ):
        return
    made = moves(at.before.combination, at.change.combination)
    controls = (made.draw | made.put_in) & at.organ.control_ids()
    if len(controls) > at.most_by_hand:
        yield Finding(
            NAME,
            LEVEL,
            f"{len(controls)} controls move here ({len(made.draw & controls)} to draw, "
            f"{len(made.put_in & controls)} to put in); by hand about {at.most_by_hand} fit "
            "while the music goes on.",
            _evidence(at.organ, controls),
        )


def _evidence(organ: Organ, controls: frozenset[str]) -> Evidence:
    couplers = {one.id for one in organ.couplers}
    tremulants = {one.id for _, one in organ.tremulants()}
    return Evidence(
        stops=tuple(sorted(controls - couplers - tremulants)),
        couplers=tuple(sorted(controls & couplers)),
        tremulants=tuple(sorted(controls & tremulants)),
        numbers=(("moves", float(len(controls))),),
    )


def has_aids(organ: Organ) -> bool:
    """Tell whether a console is known to have anything that moves several controls at once."""
    console = organ.console
    return (
        console.sequencer
        or any(one.kind is not PistonKind.REVERSIBLE for one in console.pistons)
        or any(_AIDS.search(one) and not _REVERSIBLE.match(one) for one in organ.accessories)
    )
