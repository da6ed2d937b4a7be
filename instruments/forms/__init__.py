"""The forms of the organs: a pasted list, an organ's parts, its console."""

from instruments.forms.paste import PasteForm

__all__ = ["PasteForm"]
