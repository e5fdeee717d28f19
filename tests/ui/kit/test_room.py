"""Dialogs open as large as they ask, and no larger than the screen."""

import pytest
from PySide6.QtWidgets import QDialog

from ui.decks.decks import DecksDialog
from ui.kit.forms.room import open_at
from ui.laying.spreads.spreads import SpreadsDialog


def test_a_dialog_grows_with_the_letters(qtbot, look):
    dialog = QDialog()
    qtbot.addWidget(dialog)
    look.set_scale(1.5)
    open_at(dialog, look, 200, 100)
    assert dialog.size().toTuple() == (300, 150)


@pytest.mark.parametrize("kind", [DecksDialog, SpreadsDialog])
def test_at_the_largest_letters_its_buttons_are_still_on_the_screen(qtbot, look, session, kind):
    look.set_scale(1.5)
    dialog = kind(session, look)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.height() < dialog.screen().availableGeometry().height()
