"""When own words were written, and how they grew: along time, the readings between them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from html import escape

from PySide6.QtCore import QUrl
from PySide6.QtWidgets import QWidget

from binder.counting import counted
from binder.study import dates
from binder.study.cards import words
from binder.study.cards.appearances import Appearance
from binder.study.cards.words import Standing, WordsView
from ui.kit.prose.prose import Prose
from ui.look.theme import Look

EARLIER = "own:earlier"
ALL = "all are listed under Leaf, Earlier versions."
MOST = 6
"""So many readings between two versions are named; the others are counted."""
NEWEST = 12
"""So many versions are laid out; the others are in the list of earlier versions."""

Met = Callable[[], Sequence[Appearance]]
"""The readings the card turned up in, asked for when they are shown."""
Whole = Callable[[], Sequence[WordsView]]
"""All versions, oldest first, asked for when they are shown."""


class Grown(Prose):
    """A small line with the day; a link in it shows the earlier words and hides them again."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(look, role="label", parent=parent)
        self._standing = Standing({}, 0)
        self._history: Whole = tuple
        self._met: Met = tuple
        self._html_of: Callable[[str], str] = escape
        self._open = False

    def show_words(
        self, standing: Standing, history: Whole, met: Met, html_of: Callable[[str], str]
    ) -> None:
        """Show another card's words; hidden while none stand. `html_of` renders a text."""
        self._standing, self._history, self._met = standing, history, met
        self._html_of, self._open = html_of, False
        self.setVisible(bool(standing.now))
        if standing.now:
            self._say()

    def _say(self) -> None:
        now = self._standing.now.values()
        said = "hide how they grew" if self._open else _versions(self._standing.earlier)
        link = f', <a href="{EARLIER}">{said}</a>' if self._standing.earlier else ""
        last = dates.written(max(one.at for one in now))
        old = "".join(self._laid(list(now))) if self._open else ""
        self.show_html(f"<p><small>Written {last}{link}</small></p>{old}")

    def _laid(self, now: Sequence[WordsView]) -> Iterator[str]:
        """Along time from now back: words, and below each the readings that came before it."""
        met = list(self._met())
        said = [one for one in self._history() if one.text or one in now][::-1]
        for one in said[:NEWEST]:
            since = [seen for seen in met if seen.day[:10] >= one.at[:10]]
            met = met[len(since) :]
            yield _between(since)
            yield _now(one) if one in now else self._old(one)
        if len(said) > NEWEST:
            yield f"<p><small>{_versions(len(said) - NEWEST)} before these; {ALL}</small></p>"

    def _old(self, one: WordsView) -> str:
        day = f"<small>{dates.written(one.at)}{_way(one)}:</small>"
        html = self._html_of(one.text)
        first, tag, rest = html.partition("<p>")
        return f"<p>{day} {rest}" if tag and not first.strip() else f"<p>{day}</p>{html}"

    def _follow(self, url: QUrl) -> None:
        if url.toString() != EARLIER:
            super()._follow(url)
            return
        self._open = not self._open
        self._say()


def _versions(count: int) -> str:
    return counted(count, "earlier version")


def _way(one: WordsView) -> str:
    return "" if one.way == words.UPRIGHT else ", reversed"


def _now(one: WordsView) -> str:
    return f"<p><small>{dates.written(one.at)}{_way(one)}: the words above</small></p>"


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
