"""The screens that pages are made for, and scripts on or off, as marks for tests."""

import pytest

TABLET = {"width": 820, "height": 1180}
DESK = {"width": 1440, "height": 900}

on_every_screen = pytest.mark.parametrize("screen", [TABLET, DESK], ids=["tablet", "desk"])
with_and_without_javascript = pytest.mark.parametrize(
    "javascript", [True, False], ids=["javascript", "no javascript"]
)
