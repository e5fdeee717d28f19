"""Small questions: a line of text, a yes or no, a choice from a list."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QColorDialog, QInputDialog, QMessageBox, QWidget


def line(parent: QWidget, title: str, label: str, text: str = "") -> str | None:
    """A line of text, or None when the user thought better of it."""
    said, sure = QInputDialog.getText(parent, title, label, text=text)
    return said.strip() if sure and said.strip() else None


def choice(
    parent: QWidget, title: str, label: str, words: Sequence[str], at: int = 0
) -> int | None:
    """Index of the chosen words, or None."""
    said, sure = QInputDialog.getItem(parent, title, label, list(words), at, False)
    return list(words).index(said) if sure and said in words else None


def sure(parent: QWidget, title: str, question: str, yes: str) -> bool:
    """True when the user agrees; `yes` are the words on the button that does it."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, title, question, parent=parent)
    agree = box.addButton(yes, QMessageBox.ButtonRole.AcceptRole)
    leave = box.addButton("Leave it", QMessageBox.ButtonRole.RejectRole)
    box.setDefaultButton(leave)
    box.exec()
    return box.clickedButton() is agree


def tell(parent: QWidget, title: str, words: str) -> None:
    """Say something that needs no answer."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, title, words, parent=parent)
    box.addButton("Close", QMessageBox.ButtonRole.AcceptRole)
    box.exec()


def colour(parent: QWidget, title: str) -> str | None:
    """A colour as '#rrggbb', or None."""
    chosen = QColorDialog.getColor(parent=parent, title=title)
    return chosen.name() if chosen.isValid() else None
