"""With letters twice as large in a small window, no control is too small for its words.

What each control needs is asked of Qt's own font metrics and size hints.
"""

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QDialog

from binder.study.leaves import leaves, tabs
from tests.ui.clipping import clipped
from tests.ui.driving import settle

DIALOGS = {
    "The Fool": (
        "new_binder recolour_binder take_off calendar blank decks spreads new_tab rename_leaf "
        "earlier mark_picture pair_card move_leaf drawer draws recall_wishes card_faces "
        "link_choices finish_level keys about older"
    ),
}
PLACES = {
    "The Fool": "write across recall came sources plan contents print print_bibliography",
    "Stall for Christmas": (
        "write new_reading another_reading change_reading look_back year_sheet handbook who_helps "
        "print"
    ),
}


def each(table):
    return [(leaf, name) for leaf, names in table.items() for name in names.split()]


@pytest.fixture
def large(window):
    """A small window with letters of double size, both themes being of one shape."""
    window.resize(1100, 700)
    window.look.set_scale(2)
    settle(5)
    yield window
    window.look.set_scale(1)


def lies(window, title):
    """Open the leaf of that title, whichever binder it is in."""
    for binder in window.session.shelf.binders:
        for tab in tabs.tabs(binder):
            for entry in leaves.contents(binder, tab):
                if entry.title == title:
                    window.session.open_leaf(entry.uid)
                    return settle(5)
    raise AssertionError(title)


@pytest.mark.parametrize(("leaf", "action"), each(DIALOGS))
def test_in_every_dialog(large, qtbot, leaf, action):
    lies(large, leaf)
    found = []

    def look():
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, QDialog) and dialog.isVisible():
            settle(5)
            found.append(list(clipped(dialog)))
            dialog.reject()
        elif not found:
            QTimer.singleShot(10, look)

    QTimer.singleShot(0, look)
    large.actions_by_name[action].trigger()
    settle()
    assert found == [[]]


@pytest.mark.parametrize(("leaf", "action"), each(PLACES))
def test_in_every_place(large, qtbot, leaf, action):
    lies(large, leaf)
    large.actions_by_name[action].trigger()
    settle(5)
    assert list(clipped(large)) == []


def test_a_label_too_narrow_is_told(qtbot):
    from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

    window = QWidget()
    qtbot.addWidget(window)
    label = QLabel("Words that are long", window)
    QVBoxLayout(window).addWidget(label)
    window.show()
    assert list(clipped(window)) == []
    label.setFixedWidth(30)
    settle()
    assert len(list(clipped(window))) == 1
