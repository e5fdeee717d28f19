"""The links in a leaf's running text, and the HTML in the form that Qt's rich text keeps."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from PySide6.QtGui import QTextDocument

_SAID = re.compile(r'href="card:([^"]*)" class="said"')


@dataclass(frozen=True, slots=True)
class Link:
    """A link in the text: from character to character, and the address it leads to.

    `said` is true for a card name that was recognised, false for a link somebody wrote.
    """

    start: int
    end: int
    address: str
    said: bool = False


@dataclass(frozen=True, slots=True)
class Pointed:
    """What a context menu was asked for: the link there with its words, and what is selected."""

    link: Link | None
    words: str
    selected: str


def prepared(html: str) -> str:
    """The HTML with what Qt's rich text would lose said in a way that it keeps."""
    said = _SAID.sub(r'href="said:\1"', html)
    tables = said.replace("<table>", '<table class="set" cellspacing="0">')
    return tables.replace("\n</code></pre>", "</code></pre>")


def address(href: str) -> str:
    """The address behind a link as it was shown."""
    return f"card:{href[5:]}" if href.startswith("said:") else href


def links_in(document: QTextDocument) -> Iterator[Link]:
    """The links of a document; one that runs over several formats comes as several."""
    block = document.begin()
    while block.isValid():
        at = block.position()
        for run in block.textFormats():
            if run.format.isAnchor():
                href = run.format.anchorHref()
                if href:
                    yield Link(
                        at + run.start, at + run.start + run.length, address(href),
                        href.startswith("said:"),
                    )  # fmt: skip
        block = block.next()
