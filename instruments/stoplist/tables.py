"""Tables: the words that head divisions and make couplers, in plain English lists."""

#: Words of a heading to the division's name and whether feet play it.
DIVISIONS: dict[str, str] = {
    "great": "Great", "gt": "Great", "grand": "Great", "swell": "Swell", "sw": "Swell",
    "choir": "Choir", "ch": "Choir", "positive": "Positive", "pos": "Positive",
    "positiv": "Positive", "solo": "Solo", "so": "Solo", "echo": "Echo",
    "antiphonal": "Antiphonal", "chancel": "Chancel", "bombarde": "Bombarde",
    "orchestral": "Orchestral", "manual": "Manual", "manuals": "Manual", "pedal": "Pedal",
    "pedals": "Pedal", "ped": "Pedal", "ped.": "Pedal",
}  # fmt: skip
PEDAL = "Pedal"
HEADING_WORDS = frozenset(
    {
        "organ",
        "division",
        "department",
        "enclosed",
        "unenclosed",
        "floating",
        "the",
        "in",
        "box",
        "expressive",
        "under",
        "expression",
        "swell",
    }
)
ACCESSORY_WORDS = (
    "piston",
    "combination pedal",
    "thumb",
    "toe stud",
    "cancel",
    "crescendo",
    "reversible",
    "generals",
    "memory",
    "swell pedal",
    "balanced",
    "zimbelstern",
    "cymbelstern",
    "nightingale",
    "blower",
    "sforzando",
    "tutti",
    "sequencer",
    "combinations",
)
