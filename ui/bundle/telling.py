"""How somebody who installs is told how it went: in the terminal, or in a small window."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable

from binder.errors import CanMend
from ui.start import has_display


def tell(verb: Callable[[], str]) -> int:
    """Do something and tell the sentence it gives back, or why it failed; an exit code."""
    try:
        sentence, code = verb(), 0
    except CanMend as error:
        sentence, code = str(error), 2
    (sys.stderr if code else sys.stdout).write(f"{sentence}\n")
    if not in_terminal() and has_display(os.environ):
        show(sentence)
    return code


def in_terminal() -> bool:
    """Whether somebody reads what is printed."""
    return any(stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr) if stream)


def show(sentence: str) -> None:
    """Show a sentence until it is read."""
    from PySide6.QtWidgets import QMessageBox

    from ui.app import application
    from ui.look import theme

    theme.apply(application(), theme.load("day"))
    box = QMessageBox(QMessageBox.Icon.NoIcon, "Ringbound", sentence)
    box.addButton("Close", QMessageBox.ButtonRole.AcceptRole)
    box.exec()
