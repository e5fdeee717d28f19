"""Leaves rendered to HTML, the last ones kept so that turning back is instant."""

from __future__ import annotations

import re
from collections import OrderedDict
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from binder.cards.prose import Lexicon, Mention
    from binder.study.cards.links import Linker

MOST = 40
"""Leaves kept."""

_PLAIN = re.compile(r"[A-Za-z\u00c0-\u024f](?:[^\W_]| (?! |$)|[,;!?'()\u2019-]|\.(?= |$))*")
"""Letters, figures and the points between them; nothing that Markdown takes for a mark."""

Pictures = Callable[[str], tuple[int, int] | None]
"""Width and height of the kept picture with that uid, or None."""


class Rendered:
    """HTML by what it depends on: the text, the leaf, and what is linked there at the time."""

    def __init__(self, most: int = MOST) -> None:
        self._most = most
        self._kept: OrderedDict[tuple[str, int, str], tuple[Lexicon, str]] = OrderedDict()

    def html(
        self, linker: Linker, leaf_uid: str, text: str, pictures: Pictures | None = None
    ) -> str:
        """The HTML of a leaf's text with its card names linked.

        `pictures` gives the size of a kept picture, as `binder.page.markup.markdown.to_html` asks.
        """
        lexicon = linker.lexicon(leaf_uid)
        key = (leaf_uid, id(lexicon), text)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key][1]
        made = self._made(linker, leaf_uid, text, pictures)
        self._kept[key] = (lexicon, made)
        while len(self._kept) > self._most:
            self._kept.popitem(last=False)
        return made

    def _made(self, linker: Linker, leaf_uid: str, text: str, pictures: Pictures | None) -> str:
        if is_plain(text):
            return f"<p>{linked(text, linker.find(text, leaf_uid))}</p>"
        from binder.page.markup.markdown import to_html

        return to_html(
            text, link_cards=lambda words: linker.find(words, leaf_uid), pictures=pictures
        )

    def forget(self) -> None:
        """Render everything anew from now on."""
        self._kept.clear()


def is_plain(text: str) -> bool:
    """Whether a text is one line of words in which Markdown could find nothing to set.

    Keywords and what is seen in a picture mostly are; they are set without the whole machinery.
    """
    return _PLAIN.fullmatch(text) is not None


def linked(text: str, mentions: Iterable[Mention]) -> str:
    """Plain words as HTML, the card names found in them as links."""
    from html import escape  # its table of names is slow to import

    parts, at = [], 0
    for said in mentions:
        name = escape(text[said.start : said.end], quote=False)
        parts.append(escape(text[at : said.start], quote=False))
        parts.append(f'<a href="card:{said.key}" class="said">{name}</a>')
        at = said.end
    return "".join(parts) + escape(text[at:], quote=False)


RENDERED = Rendered()
"""Shared by both sides of every open binder."""
