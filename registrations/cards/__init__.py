"""Printed cards: what is on a sheet, where it stands, and the drawing of it."""
