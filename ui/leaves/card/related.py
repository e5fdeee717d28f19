"""Cards that belong with a card, as they are shown on its leaf."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from binder.cards.titles import DeckTitles
from binder.page.address import Scheme
from binder.study.cards.related import Kin, PairView, called
from ui.kit.page.section import Row, beside
from ui.look.theme import Theme

PAIR = Scheme.PAIR.prefix
"""Address of a pair: then its uid, or the key of the card that a new one is made for."""
COLUMN = 108
"""Width of the names in pixels at scale 1."""


def related_html(
    key: str,
    kin: Sequence[Kin],
    pairs: Sequence[PairView],
    titles: DeckTitles,
    render: Callable[[str], str],
    theme: Theme,
) -> str:
    """What joins them, then the cards, each a link; the pairs last, with why and a way to change.

    `render` makes HTML of Markdown.
    """
    rows: list[Row] = [(one.label, _cards(one.keys, titles)) for one in kin]
    for at, pair in enumerate(pairs):
        why = _why(render(pair.text), theme)
        rows.append(("" if at else "Pairs", _pair(key, pair, titles, why)))
    add = f'<a href="{PAIR}{key}"><span class="soft">Add a pair…</span></a>'
    rows.append(("" if pairs else "Pairs", add))
    return beside(rows, theme, COLUMN)


def _pair(key: str, pair: PairView, titles: DeckTitles, why: str) -> str:
    change = f'<a href="{PAIR}{pair.uid}"><span class="soft">change</span></a>'
    return f"{_cards((pair.across(key),), titles)}{why} {change}"


def _why(html: str, theme: Theme) -> str:
    """The reader's reason, in the colour of own words."""
    said = html.removeprefix("<p>").removesuffix("</p>")
    return f': <span style="color: {theme["own"].name()};">{said}</span>' if said else ""


def _cards(keys: Sequence[str], titles: DeckTitles) -> str:
    return ", ".join(f'<a href="card:{key}">{escape(called(key, titles))}</a>' for key in keys)
