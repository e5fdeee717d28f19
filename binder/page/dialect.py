"""The dialect of the leaves, as extensions of the markdown package.

To the published syntax and the package's own tables, footnotes and sane lists it adds: fenced
code also within list items and open to the end of the leaf, tick boxes, ~~struck~~ words, lists
that may start right under a line of text, and `<` as plain text unless a known tag follows.
Everything here is bounded: a leaf that takes far longer than its length allows is given up.

Import this module only when something is rendered: the package takes a while to load.
"""
# mypy: disable-error-code="misc"
# (the package's classes are untyped here, and extending it means deriving from them)

import re
import time
import xml.etree.ElementTree as Tree
from collections.abc import Callable
from html import escape
from typing import Any

from markdown import Markdown
from markdown.blockprocessors import BlockProcessor
from markdown.extensions import Extension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension, TableProcessor
from markdown.inlinepatterns import SimpleTagInlineProcessor
from markdown.preprocessors import Preprocessor

from binder.page.angles import angles
from binder.page.footnotes import Footnotes
from binder.page.lines import TICK, Where, step
from binder.page.lists import ITEM, STEP, Levels

BOX = re.compile("\x02box:(\\d+):([ xX])\x03")
"""Stands for a tick box: its index and what stands in it."""

_STRUCK = r"(~~)(?![\s~])((?:[^~]++|~(?!~))++)(?<!\s)~~"
_RULE = re.compile(r"-{2,}\s*$")
_NO_HEADING = re.compile(r" {0,3}(?:>|(?:[-*+]|\d+\.) |[-_*]{3,}\s*$)")
_NEW_LIST = re.compile(r" {0,3}(?:[-*+]|1\.) +\S")
_MOST_CELLS = 20_000


class TooTangled(Exception):
    """The leaf took far longer than its length allows; it is shown as it was typed instead."""


class Watch:
    """The time one leaf may take; asked at every step that could be one of very many."""

    def __init__(self) -> None:
        self.until = 0.0

    def start(self, length: int) -> None:
        """Allow for a leaf of so many characters, many times what an honest one needs.

        Only the time this thread works is counted, so a busy machine changes nothing.
        """
        self.until = time.thread_time() + 0.5 + length * 8e-6

    def check(self) -> None:
        """Raise TooTangled once the time is up."""
        if time.thread_time() > self.until:
            raise TooTangled

    def over(self, work: Callable[..., Any]) -> Callable[..., Any]:
        """The same work, checked before each call."""

        def checked(*arguments: Any) -> Any:
            self.check()
            return work(*arguments)

        return checked


def build() -> tuple[Markdown, Watch]:
    """One Markdown of this dialect, with the watch that bounds it; for one thread alone."""
    watch = Watch()
    extensions = [TableExtension(), SaneListExtension(), Footnotes(), _Dialect(watch)]
    made = Markdown(extensions=extensions, output_format="html")
    patterns = list(made.inlinePatterns)
    for pattern in patterns:
        pattern.handleMatch = watch.over(pattern.handleMatch)
    made.treeprocessors["inline"].inlinePatterns = patterns  # a list is a tenth quicker
    return made, watch


class _Dialect(Extension):
    """Our own parts, put where the package looks for them."""

    def __init__(self, watch: Watch) -> None:
        super().__init__()
        self.watch = watch

    def extendMarkdown(self, md: Markdown) -> None:
        blocks = md.parser.blockprocessors
        blocks.register(_Watching(md.parser, self.watch), "watch", 200)
        blocks.register(_Tables(md.parser, {"use_align_attribute": True}), "table", 75)
        md.preprocessors.register(_Lines(md), "lines", 25)
        md.preprocessors.register(_Angles(md), "angles", 22)
        md.inlinePatterns.register(SimpleTagInlineProcessor(_STRUCK, "s"), "struck", 55)
        md.ESCAPED_CHARS.append("~")


class _Watching(BlockProcessor):
    """Takes no block; only looks at the watch before each."""

    def __init__(self, parser: Any, watch: Watch) -> None:
        super().__init__(parser)
        self.watch = watch

    def test(self, parent: Tree.Element, block: str) -> bool:
        self.watch.check()
        return False


class _Tables(TableProcessor):
    """Tables, unless a few lines would make a table of more cells than anyone could read."""

    def test(self, parent: Tree.Element, block: str) -> bool:
        if "|" not in block or not super().test(parent, block):
            return False
        return len(self.separator) * block.count("\n") <= _MOST_CELLS


class _Lines(Preprocessor):
    """Fenced code put by, tick boxes marked, a gap before a list that follows a line of text."""

    def run(self, lines: list[str]) -> list[str]:
        self.made: list[str] = []
        self.code: list[str] = []
        self.boxes = 0
        self.levels = Levels()
        self.tight = False
        where = Where()
        for line in lines:
            before = where
            kind, where = step(line, before)
            if kind == "text":
                self.text(line, before)
            elif kind == "open":
                self.above, self.lead = before, line[: where.indent]
            elif kind == "code":
                self.code.append(_dedent(line, before.indent))
            elif kind == "close":
                self.put_by(before)
        if where.fence:
            self.code = "\n".join(self.code).rstrip("\n").split("\n")
            self.put_by(where)
        return [*self.made, "", ""]

    def text(self, line: str, before: Where) -> None:
        """An ordinary line."""
        if not before.blank and self.parted(line, before):
            self.made.append("")
            self.tight = True
        elif before.blank:
            self.tight = bool(ITEM.match(line))
        line = self.levels.placed(line, listed=before.listed, blank=before.blank)
        box = TICK.match(line)
        if box:
            line = f"{box[1]}\x02box:{self.boxes}:{box[2]}\x03{line[box.end() :]}"
            self.boxes += 1
        self.made.append(line)

    def parted(self, line: str, before: Where) -> bool:
        """Whether a line begins something new that the package sees only below a gap."""
        if _RULE.match(line):
            return bool(_NO_HEADING.match(self.made[-1]))
        if before.listed:
            return not self.tight and bool(ITEM.match(line))
        return bool(_NEW_LIST.match(line))

    def put_by(self, where: Where) -> None:
        """The end of a fenced block: its code goes where no later step will touch it."""
        code = "".join(f"{line}\n" for line in self.code)
        self.code = []
        held = self.md.htmlStash.store(f"<pre><code>{escape(code, quote=False)}</code></pre>")
        if self.lead.strip():
            self.text(self.lead + held, self.above)
            return
        margin = " " * STEP * max(1, self.levels.depth(where.indent)) if where.listed else ""
        self.made += ["", margin + held, ""]


def _dedent(line: str, most: int) -> str:
    """A line without the spaces its fence was indented by, as far as it has them."""
    return line[min(most, len(line) - len(line.lstrip(" "))) :]


class _Angles(Preprocessor):
    """`<` stays a tag only where a whole known tag stands; anywhere else it is a character."""

    def run(self, lines: list[str]) -> list[str]:
        text = "\n".join(lines)
        return angles(text).split("\n") if "<" in text else lines
