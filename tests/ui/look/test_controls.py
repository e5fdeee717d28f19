"""Standard controls: which one has the keyboard can be seen, and no stock icons stand on them."""

import pytest
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QInputDialog,
    QPushButton,
    QRadioButton,
    QStyle,
    QVBoxLayout,
)

from tests.ui.driving import settle
from ui.look import theme


def main_button():
    made = QPushButton("Keep the reading")
    made.setProperty("main", True)
    return made


def chosen():
    made = QRadioButton("On paper")
    made.setChecked(True)
    return made


def ticked():
    made = QCheckBox("Leave out")
    made.setChecked(True)
    return made


@pytest.fixture(params=["day", "lamp"])
def colours(request, qapp):
    shown = theme.load(request.param)
    theme.apply(qapp, shown)
    yield shown
    theme.apply(qapp, theme.load("day"))


@pytest.mark.parametrize("make", [main_button, chosen, ticked])
def test_the_control_with_the_keyboard_looks_otherwise_inside_its_edge(qtbot, colours, make):
    dialog, column = QDialog(), QVBoxLayout()
    qtbot.addWidget(dialog)
    dialog.setLayout(column)
    here, other = make(), QCheckBox("Another")
    column.addWidget(other)
    column.addWidget(here)
    with qtbot.waitActive(dialog):
        dialog.show()
        dialog.activateWindow()
    other.setFocus()
    settle()
    bare = dialog.grab(here.geometry()).toImage()
    here.setFocus()
    settle()
    held = dialog.grab(here.geometry()).toImage()
    changed = sum(
        abs(bare.pixelColor(x, y).lightness() - held.pixelColor(x, y).lightness()) > 80
        for x in range(held.width())
        for y in range(held.height())
    )
    assert changed > 2 * here.fontMetrics().horizontalAdvance(here.text())


def test_small_dialogs_ask_for_no_icons(qtbot, colours):
    dialog = QInputDialog()
    qtbot.addWidget(dialog)
    dialog.setOkButtonText("Keep")
    dialog.show()
    box = dialog.findChild(QDialogButtonBox)
    hint = QStyle.StyleHint.SH_DialogButtonBox_ButtonsHaveIcons
    assert not box.style().styleHint(hint, None, box)
    assert all(button.icon().isNull() for button in box.buttons())
