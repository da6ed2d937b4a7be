"""Tone: the families a stop's sound belongs to, and how its pipes are made."""

from enum import StrEnum


class Family(StrEnum):
    """The kind of tone. Twelfths and mixtures have one too; the rest follows from their lengths."""

    PRINCIPAL = "principal"
    FLUTE = "flute"
    STRING = "string"
    REED = "reed"
    PERCUSSION = "percussion"
    OTHER = "other"


class Construction(StrEnum):
    """How the pipes of a stop are made, as far as it shapes the sound."""

    OPEN = "open"
    STOPPED = "stopped"
    CHIMNEY = "chimney"
    HARMONIC = "harmonic"
    TAPERED = "tapered"
    NARROW_STOPPED = "narrow-stopped"
    UNDULATING = "undulating"
    FULL_LENGTH = "full-length"
    HALF_LENGTH = "half-length"
    NARROW_CONICAL = "narrow-conical"
    SHORT = "short"
    FREE = "free"
    OTHER = "other"


FAMILY_WORDS: dict[Family, str] = {
    Family.PRINCIPAL: "Principal: the chorus tone of the organ",
    Family.FLUTE: "Flute: round, few overtones",
    Family.STRING: "String: narrow, many overtones",
    Family.REED: "Reed: a beating tongue",
    Family.PERCUSSION: "Percussion: struck, not blown",
    Family.OTHER: "Other",
}

CONSTRUCTION_WORDS: dict[Construction, str] = {
    Construction.OPEN: "open pipes",
    Construction.STOPPED: "stopped pipes (half the length, mostly odd overtones)",
    Construction.CHIMNEY: "half-stopped pipes with a chimney",
    Construction.HARMONIC: "harmonic pipes (double length, overblown)",
    Construction.TAPERED: "tapered pipes",
    Construction.NARROW_STOPPED: "narrow stopped pipes (the twelfth is heard too)",
    Construction.UNDULATING: "tuned apart on purpose, so that it beats",
    Construction.FULL_LENGTH: "full-length resonators",
    Construction.HALF_LENGTH: "half-length cylindrical resonators",
    Construction.NARROW_CONICAL: "narrow conical resonators",
    Construction.SHORT: "short resonators",
    Construction.FREE: "free reeds",
    Construction.OTHER: "of its own kind",
}
