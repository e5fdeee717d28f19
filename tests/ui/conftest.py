"""Widgets under test stand in a real application that needs no display."""

import os

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture
def look(qapp):
    """The day theme, applied to the application."""
    from ui import theme

    made = theme.Look(theme.load("day"))
    theme.apply(qapp, made.theme)
    return made
