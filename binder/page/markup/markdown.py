"""Markdown to HTML that is safe to show, and to plain words.

The markdown package renders, nh3 cleans with a strict list of what may stay, and one last pass
makes links of card names. Nothing a leaf says can load anything or run anything. The heavy
packages are imported at the first leaf rendered, not with this module.
"""

import re
import threading
from collections.abc import Container
from html import escape, unescape
from typing import TYPE_CHECKING

from binder.page.lines import tick
from binder.page.markup.paste import Pasted, from_html

if TYPE_CHECKING:
    from binder.page.markup.finish import LinkCards, Pictures

__all__ = ["LONGEST", "Pasted", "from_html", "plain", "tick", "to_html"]

LONGEST = 200_000
"""Characters a leaf may have to be set with headings and lists; about 35,000 words."""

TOO_LONG = (
    "This leaf is too long to be set with headings and lists, so its words are shown as they were"
    " typed. Nothing is lost; split it into shorter leaves to see it set."
)
TOO_TANGLED = (
    "The marks in this leaf are too tangled to be set, so its words are shown as they were typed."
    " Nothing is lost."
)

_here = threading.local()
_PARAGRAPHS = re.compile(r"\n[ \t]*\n\s*")
_MARKS = re.compile(r"[*_`\[\]<>&#|~!\\\x02\n]|^[ \t]*(?:[-+]|\d+\.)[ \t]|^(?: {4}|\t)")
_CALL = re.compile(r'<a class="footnote-(?:ref|backref)"[^>]*>[^<]*</a>')
_CELL = re.compile(r"</t[dh]>\s*<t[dh](?: [^>]*)?>")
_BREAK = re.compile(r"<(?:br|hr|/?(?:p|h\d|ul|ol|li|blockquote|pre|tr|table|div))(?: [^>]*)?>")
_ALT = re.compile(r'<img(?: src="[^"]*")? alt="([^"]*)"[^>]*>')
_TAG = re.compile(r'<[^<>"]*(?:"[^"]*"[^<>"]*)*>')


def to_html(
    text: str,
    *,
    link_cards: "LinkCards | None" = None,
    pictures: "Pictures | None" = None,
    unlinked: Container[str] = (),
) -> str:
    """The sanitised HTML of a leaf, in the tags that Qt's rich text draws well.

    `link_cards` is called once with all the words of the leaf that stand outside links and code
    (blocks two line ends apart) and gives the card names in them; each becomes
    `<a href="card:KEY" class="said">`. `unlinked` names more tags to leave alone, as {'h1'}.
    `pictures` gives the size in pixels to draw a file's UUID at, or None where the binder does
    not hold it. A tick box is `<a href="tick:N">`, N for `tick(text, N)`; a footnote is called by
    `<sup id="fnref:1"><a class="footnote-ref" href="#fn:1">` and stands in `<li id="fn:1">` within
    `<div class="footnote">` at the end. What the program says itself is in `<small>`.
    A leaf longer than LONGEST, or hopelessly tangled, comes as plain paragraphs under a sentence.
    """
    if len(text) > LONGEST:
        return _as_typed(text, TOO_LONG)
    cleaned = _cleaned(text)
    if cleaned is None:
        return _as_typed(text, TOO_TANGLED)
    from binder.page.markup.finish import Finish

    return Finish(link_cards, pictures, unlinked).html(cleaned)


def plain(text: str) -> str:
    """The words of some Markdown without its marks, a line for each block; footnote calls, tick
    boxes and addresses are left out. For titles, lines of finds and the command line."""
    if not _MARKS.search(text):
        return text.strip()
    cleaned = _cleaned(text) if len(text) <= LONGEST else None
    if cleaned is None:
        return text.strip()
    from binder.page.markup.prepare import BOX

    html = _CELL.sub(" ", _ALT.sub(r"\1", _CALL.sub("", BOX.sub("", cleaned))))
    words = unescape(_TAG.sub("", _BREAK.sub("\n", html)))
    lines = (" ".join(line.split()) for line in words.split("\n"))
    return "\n".join(line for line in lines if line)


def _cleaned(text: str) -> str | None:
    """Cleaned HTML before the last pass, or None where the leaf is too tangled."""
    from binder.page.markup import angles, clean, dialect, watch

    if not hasattr(_here, "markdown"):
        _here.markdown, _here.watch = dialect.build()
    _here.watch.start(len(text))
    try:
        html: str = _here.markdown.reset().convert(clean.visible(text))
    except (watch.TooTangled, RecursionError):
        del _here.markdown  # it was left in the middle of its work
        return None
    return clean.cleaned(html).replace(angles.LESS, "&lt;")


def _as_typed(text: str, why: str) -> str:
    """The words as they were typed, in paragraphs, under a sentence that says why."""
    typed = escape(text.replace("\r\n", "\n").replace("\r", "\n").strip("\n"), quote=False)
    paragraphs = _PARAGRAPHS.sub("</p>\n<p>", typed)
    lines = paragraphs.replace("\n", "<br>\n").replace("</p><br>\n<p>", "</p>\n<p>")
    return f"<p><small>{why}</small></p>\n<p>{lines}</p>"
