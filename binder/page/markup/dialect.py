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
import xml.etree.ElementTree as Tree
from collections.abc import Sequence
from typing import Any

from markdown import Markdown
from markdown.blockprocessors import BlockProcessor
from markdown.extensions import Extension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension, TableProcessor
from markdown.inlinepatterns import DelimiterProcessor, SimpleTagInlineProcessor

from binder.page.markup.footnotes import Footnotes
from binder.page.markup.prepare import Angles, Lines
from binder.page.markup.watch import Watch

# No possessive repeat of a group: Python before 3.11.5 loses matches with it.
_STRUCK = r"(~~)(?![\s~])((?:[^~]|~(?!~))+)(?<!\s)~~"
_Match = tuple[Tree.Element | None, int | None, int | None]
_MOST_CELLS = 20_000


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
        md.preprocessors.register(Lines(md), "lines", 25)
        md.preprocessors.register(Angles(md), "angles", 22)
        md.inlinePatterns.register(SimpleTagInlineProcessor(_STRUCK, "s"), "struck", 55)
        emphasis = _Emphasis("*", "strong,em", md)
        emphasis.add("_", "strong,em", smart=True)
        md.inlinePatterns.register(emphasis, "em_strong", 60)
        md.ESCAPED_CHARS += "~="


class _Watching(BlockProcessor):
    """Takes no block; only looks at the watch before each."""

    def __init__(self, parser: Any, watch: Watch) -> None:
        super().__init__(parser)
        self.watch = watch

    def test(self, parent: Tree.Element, block: str) -> bool:
        self.watch.check()
        return False


class _Emphasis(DelimiterProcessor):
    """The package's own, made to lose no letter where stars were mistyped.

    It keeps further pairs for later calls with places that are off by then, and may close two
    stars with one and the letter after it: `*a **b*c` loses its c. Here every call looks afresh,
    and a pair whose closing marks are no marks is none.
    """

    def handleMatch(self, m: re.Match[str], data: str) -> _Match:
        self.data, self.sound = data, True
        found: _Match = super().handleMatch(m, data)
        self.reset()
        if self.sound:
            return found
        run = self.delimiters[m[0]].bad.match(data, m.start())
        return None, run.start(), run.end()

    def add_region(self, delim: Any, a: int, b: int, c: int, d: int, size: int) -> None:
        self.sound = self.sound and set(self.data[a:b] + self.data[c:d]) == {delim.token}
        super().add_region(delim, a, b, c, d, size)


class _Tables(TableProcessor):
    """Tables, unless a few lines would make a table of more cells than anyone could read."""

    def test(self, parent: Tree.Element, block: str) -> bool:
        if "|" not in block or not super().test(parent, block):
            return False
        return len(self.separator) * block.count("\n") <= _MOST_CELLS

    def _build_row(self, row: str, parent: Tree.Element, align: Sequence[str | None]) -> None:
        """The package drops the cells a row has beyond the head; here they stay."""
        more = len(self._split_row(row)) - len(align)
        super()._build_row(row, parent, [*align, *[None] * more])
