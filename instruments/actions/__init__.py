"""Writes to a stored organ that touch more than one row, each in one transaction."""

from instruments.actions.saving import save_organ

__all__ = ["save_organ"]
