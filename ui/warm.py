"""Fetches what pages need while nothing else is done, so that none is slow when first opened."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from importlib import import_module

from PySide6.QtCore import QObject, QTimer

from ui.leaves.pages import PAGES
from ui.session.session import Session

AFTER_MS, BETWEEN_MS = 400, 20
"""When it begins, and how long the window has to itself between two portions."""
OTHERS = ("ui.desk.find", "ui.desk.walk", "binder.page.markup.markdown")


class Warm(QObject):
    """One portion at a time; gone when all is fetched."""

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._left = _portions(session)
        self._timer = QTimer(self, interval=AFTER_MS)
        self._timer.timeout.connect(self._fetch)
        self._timer.start()

    def _fetch(self) -> None:
        self._timer.setInterval(BETWEEN_MS)
        portion = next(self._left, None)
        if portion is None:
            self._timer.stop()
            self.deleteLater()
        else:
            portion()


def _portions(session: Session) -> Iterator[Callable[[], object]]:
    """Modules first, then what is made once: the rendering of a text and the names in it."""
    modules = dict.fromkeys((*OTHERS, *(module for module, _ in PAGES.values())))
    yield from (partial(import_module, module) for module in modules)
    yield _weigh
    yield partial(_render, session)


def _render(session: Session) -> None:
    from binder.page.markup.markdown import to_html

    to_html("*Fetched* ahead.", link_cards=lambda words: session.linker.find(words, ""))


def _weigh() -> None:
    """Read the words that a question is weighed by."""
    from binder.study.readings.touched import touched

    touched("a question")  # one long word, so that what mends slips is there too
