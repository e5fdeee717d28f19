"""When own words were written, and the earlier ones they grew from."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import QUrl
from PySide6.QtWidgets import QWidget

from binder.study import dates, words
from binder.study.words import WordsView
from ui.leaves.prose import Prose
from ui.theme import Look

EARLIER = "own:earlier"


class Grown(Prose):
    """A small line with the day; a link in it shows the earlier words and hides them again."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, role="label", parent=parent)
        self._history: tuple[WordsView, ...] = ()
        self._whole = False

    def show_history(self, history: Sequence[WordsView]) -> None:
        """Show another card's words, oldest first; hidden while none are written."""
        self._history, self._whole = tuple(history), False
        shown = words.current(history).values()
        self.setVisible(bool(shown))
        if shown:
            self._say()

    def _say(self) -> None:
        shown = words.current(self._history).values()
        earlier = [one for one in self._history if one not in shown and one.text]
        said = "hide the earlier words" if self._whole else _versions(len(earlier))
        link = f', <a href="{EARLIER}">{said}</a>' if earlier else ""
        last = dates.written(max(one.at for one in shown))
        old = "".join(_old(one) for one in reversed(earlier)) if self._whole else ""
        self.show_html(f"<p><small>Written {last}{link}</small></p>{old}")

    def _follow(self, url: QUrl) -> None:
        if url.toString() != EARLIER:
            super()._follow(url)
            return
        self._whole = not self._whole
        self._say()


def _versions(count: int) -> str:
    return "1 earlier version" if count == 1 else f"{count} earlier versions"


def _old(one: WordsView) -> str:
    way = "" if one.way == words.UPRIGHT else ", reversed"
    said = escape(one.text).replace("\n", "<br>")
    return f"<p><small>{dates.written(one.at)}{way}:</small> {said}</p>"
