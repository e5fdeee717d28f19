"""Where nothing was copied there is nothing to paste, and that is said."""

from PySide6.QtCore import QMimeData
from PySide6.QtWidgets import QApplication

from tests.ui.driving import click, divider, settle, spine
from ui.actions.filing import NOTHING
from ui.kit.clipboard import copied


def test_an_empty_clipboard_is_empty_data(qapp):
    QApplication.clipboard().clear()
    assert isinstance(copied(), QMimeData)
    assert not copied().text()


def test_pasting_from_an_empty_clipboard_is_said(window):
    QApplication.clipboard().clear()
    click(spine(window, "Practice"))
    click(divider(window, "Clippings"))
    window.actions_by_name["paste_handout"].trigger()
    settle()
    assert window.said.text() == NOTHING
