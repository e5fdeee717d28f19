"""Small questions: a line of text, a yes or no, a choice from a list."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtWidgets import QColorDialog, QInputDialog, QLineEdit, QMessageBox, QWidget

ANOTHER = "Another…"
LEAVE = "Leave it"
USUAL = 30
"""Letters a line has room for."""


def line(parent: QWidget | None, title: str, label: str, text: str = "") -> str | None:
    """A line of text, or None when the user thought better of it."""
    dialog = _dialog(parent, title, label)
    dialog.setTextValue(text)
    _widen(dialog, text)
    return _answer(dialog).strip() or None


def choice(
    parent: QWidget, title: str, label: str, words: Sequence[str], at: int = 0
) -> int | None:
    """Index of the chosen words, or None."""
    dialog = _dialog(parent, title, label)
    dialog.setComboBoxItems(words)
    dialog.setTextValue(words[at])
    said = _answer(dialog)
    return list(words).index(said) if said in words else None


def _dialog(parent: QWidget | None, title: str, label: str) -> QInputDialog:
    dialog = QInputDialog(parent)
    dialog.setWindowTitle(title)
    dialog.setLabelText(label)
    dialog.setOkButtonText("Keep")
    dialog.setCancelButtonText(LEAVE)
    return dialog


def _widen(dialog: QInputDialog, text: str) -> None:
    """Room for the words that stand there, or for those of a usual title."""
    for field in dialog.findChildren(QLineEdit):
        letters = field.fontMetrics()
        wide = max(letters.horizontalAdvance(text), letters.averageCharWidth() * USUAL)
        room = dialog.screen().availableGeometry().width() * 2 // 3
        field.setMinimumWidth(min(wide + letters.height() * 2, room))


def _answer(dialog: QInputDialog) -> str:
    said = dialog.textValue() if dialog.exec() else ""
    dialog.deleteLater()
    return said


def sure(parent: QWidget, title: str, question: str, yes: str, no: str = LEAVE) -> bool:
    """True when the user agrees; `yes` are the words on the button that does it."""
    return decide(parent, title, question, (yes,), no) == 0


def decide(
    parent: QWidget, title: str, question: str, ways: Sequence[str], none: str = LEAVE
) -> int | None:
    """Which of a few ways, each on a button of its own, the user takes; None for none of them."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, title, question, parent=parent)
    buttons = [box.addButton(way, QMessageBox.ButtonRole.AcceptRole) for way in ways]
    leave = box.addButton(none, QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(leave)
    box.setEscapeButton(leave)
    box.exec()
    pressed = box.clickedButton()
    box.deleteLater()
    return next((n for n, button in enumerate(buttons) if button is pressed), None)


def let_go(parent: QWidget) -> bool:
    """Whether what was filled into a form may go unkept."""
    question = "What you filled in here is not kept yet. Let it go?"
    return sure(parent, parent.windowTitle(), question, "Let it go", "Go on writing")


def tell(parent: QWidget, title: str, words: str) -> None:
    """Say something that needs no answer."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, title, words, parent=parent)
    box.addButton("Close", QMessageBox.ButtonRole.AcceptRole)
    box.exec()
    box.deleteLater()


def named_colour(parent: QWidget, title: str, named: Mapping[str, str], now: str) -> str | None:
    """One of the colours named (palette key -> word), or '#rrggbb' for another; or None."""
    keys = list(named)
    words = [*named.values(), ANOTHER]
    at = keys.index(now) if now in named else len(keys)
    chosen = choice(parent, title, "Colour:", words, at)
    if chosen is None:
        return None
    return keys[chosen] if chosen < len(keys) else any_colour(parent, title, now)


def any_colour(parent: QWidget, title: str, now: str = "") -> str | None:
    """A colour as '#rrggbb', or None."""
    from PySide6.QtGui import QColor

    chosen = QColorDialog.getColor(QColor(now), parent, title)
    return chosen.name() if chosen.isValid() else None
