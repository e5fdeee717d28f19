"""The window that benches turn leaves in."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from functools import cache
from pathlib import Path

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication

from binder.store.clock import Clock, OtherDay
from binder.store.shelf import Shelf
from ui.actions.installed import Installed
from ui.desk.window import Window
from ui.look import theme
from ui.session.memory import Memory
from ui.session.session import Session


@cache
def application() -> QApplication:
    """The one of this process; kept, since it ends with its last mention."""
    app = QApplication.instance()
    return app if isinstance(app, QApplication) else QApplication(["bench"])


def dressed() -> theme.Look:
    """The application, made if there is none, dressed for the day."""
    look = theme.Look(theme.load("day"))
    theme.apply(application(), look.theme)
    return look


@contextmanager
def laid_open(shelf: Shelf, place: Path, today: date | None = None) -> Iterator[Window]:
    """A window on a shelf, by day; what it remembers lies in the folder `place`.

    In the end both are shut, and the window is gone, so that no bench hears of the one before.
    """
    clock = OtherDay(today) if today else Clock()
    window = Window(Session(shelf, clock), dressed(), Memory(place / "desk.ini"))
    Installed(window)
    window.resize(1600, 1000)
    window.show()
    try:
        yield window
    finally:
        window.close()
        window.deleteLater()
        QApplication.sendPostedEvents(window, QEvent.Type.DeferredDelete)
        shelf.close()
