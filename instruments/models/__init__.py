"""Organs as they are stored."""

from instruments.models.console import Piston, Place
from instruments.models.organ import (
    Coupler,
    Division,
    Instrument,
    Keyboard,
    Stop,
    Tremulant,
    validate_compass,
    validate_length,
)

Control = Stop | Tremulant | Coupler
Row = Keyboard | Division | Control | Piston

__all__ = [
    "Control",
    "Coupler",
    "Division",
    "Instrument",
    "Keyboard",
    "Piston",
    "Place",
    "Row",
    "Stop",
    "Tremulant",
    "validate_compass",
    "validate_length",
]
