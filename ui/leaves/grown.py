"""When own words were written, and how they grew: along time, the readings between them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from html import escape

from PySide6.QtCore import QUrl
from PySide6.QtWidgets import QWidget

from binder.study import dates, words
from binder.study.readings import Appearance
from binder.study.words import WordsView
from ui.leaves.prose import Prose
from ui.theme import Look

EARLIER = "own:earlier"
MOST = 6
"""So many readings between two versions are named; the others are counted."""

Met = Callable[[], Sequence[Appearance]]
"""The readings the card turned up in, asked for when they are shown."""


class Grown(Prose):
    """A small line with the day; a link in it shows the earlier words and hides them again."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, role="label", parent=parent)
        self._history: tuple[WordsView, ...] = ()
        self._met: Met = tuple
        self._whole = False

    def show_history(self, history: Sequence[WordsView], met: Met = tuple) -> None:
        """Show another card's words, oldest first; hidden while none are written."""
        self._history, self._met, self._whole = tuple(history), met, False
        shown = words.current(history).values()
        self.setVisible(bool(shown))
        if shown:
            self._say()

    def _say(self) -> None:
        shown = words.current(self._history).values()
        earlier = [one for one in self._history if one not in shown and one.text]
        said = "hide how they grew" if self._whole else _versions(len(earlier))
        link = f', <a href="{EARLIER}">{said}</a>' if earlier else ""
        last = dates.written(max(one.at for one in shown))
        old = "".join(self._line(earlier, list(shown))) if self._whole else ""
        self.show_html(f"<p><small>Written {last}{link}</small></p>{old}")

    def _line(self, earlier: Sequence[WordsView], shown: Sequence[WordsView]) -> Iterator[str]:
        """Along time from now back: words, and below each the readings that came before it."""
        met = list(self._met())
        for one in sorted((*earlier, *shown), key=lambda one: one.at, reverse=True):
            since = [seen for seen in met if seen.day[:10] >= one.at[:10]]
            met = met[len(since) :]
            yield _between(since)
            yield _now(one) if one in shown else _old(one)

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


def _now(one: WordsView) -> str:
    way = "" if one.way == words.UPRIGHT else ", reversed"
    return f"<p><small>{dates.written(one.at)}{way}: the words above</small></p>"


def _between(seen: Sequence[Appearance]) -> str:
    """The readings between two versions, newest first, each a link."""
    if not seen:
        return ""
    named = [
        f'<a href="leaf:{one.leaf_uid}">{escape(one.title)}</a>, {dates.short_year(one.day)}'
        for one in seen[:MOST]
    ]
    more = len(seen) - len(named)
    if more:
        named.append("one more reading" if more == 1 else f"{more} more readings")
    said = "<br>".join(named)
    return f"<blockquote><small>{said}</small></blockquote>"
