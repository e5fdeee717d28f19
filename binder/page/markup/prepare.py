"""What is done to the lines of a leaf before the markdown package reads them.

Import this module only when something is rendered: the package takes a while to load.
"""
# mypy: disable-error-code="misc"
# (the package's classes are untyped here, and extending it means deriving from them)

import re
from html import escape

from markdown.preprocessors import Preprocessor

from binder.page.lines import HEADING, TICK, Where, step
from binder.page.markup.angles import angles
from binder.page.markup.lists import ITEM, STEP, Levels

BOX = re.compile("\x02box:(\\d+):([ xX])\x03")
"""Stands for a tick box: its index and what stands in it."""

_RULE = re.compile(r"-{2,}\s*$")
_NO_HEADING = re.compile(r" {0,3}(?:>|(?:[-*+]|\d+\.) |[-_*]{3,}\s*$)")
_TABLE_RULE = re.compile(r" {0,3}\|?(?: *:?-+:? *\|)+(?: *:?-+:? *)?$")
_NEW_LIST = re.compile(r" {0,3}(?:[-*+]|1\.) +\S")


class Lines(Preprocessor):
    """Fenced code put by, tick boxes marked, a gap before a list that follows a line of text."""

    def run(self, lines: list[str]) -> list[str]:
        """The lines for the package."""
        self.made: list[str] = []
        self.code: list[str] = []
        self.boxes = 0
        self.levels = Levels()
        self.tight, self.margin, self.tabled = False, 0, False
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
        if "#" in line:
            line = _heading(line, before.listed)
        line = self.levels.placed(line, listed=before.listed, blank=before.blank)
        if before.blank or self.parted(line, before):
            self.tight, self.margin = bool(ITEM.match(line)), _indent(line)
            if not before.blank:
                self.made.append("")
        if "|" in line and not before.listed:
            self.table(line, before.blank)
        box = TICK.match(line)
        if box:
            line = f"{box[1]}\x02box:{self.boxes}:{box[2]}\x03{line[box.end() :]}"
            self.boxes += 1
        self.made.append(line)

    def table(self, line: str, blank: bool) -> None:
        """The line under the head of a table parts the head from words right above it."""
        self.tabled = self.tabled and not blank
        if self.tabled or blank or not _TABLE_RULE.match(line) or "|" not in self.made[-1]:
            return
        self.tabled = True
        if len(self.made) > 1 and self.made[-2].strip():
            self.made.insert(-1, "")

    def parted(self, line: str, before: Where) -> bool:
        """Whether a line begins something new that the package sees only below a gap."""
        if _RULE.match(line):
            return bool(_NO_HEADING.match(self.made[-1]))
        if before.listed:
            further = self.tight and _indent(line) >= self.margin and not self.levels.changed
            return not further and bool(ITEM.match(line))
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


def _heading(line: str, listed: bool) -> str:
    """A line that may be a heading, so written that the package sees the same."""
    match = HEADING.match(line)
    if not match:
        return line
    before, marks, words, none = match.groups()
    if none or len(marks) > 6:
        return f"{before}\\{line[len(before) :]}"
    words = (words or "").rstrip()
    bare = words.rstrip("#")
    if bare.endswith("\\"):
        bare = words[: len(bare) + 1]
    if bare and bare[-1] not in " \t":
        words = bare + "\\#" * (len(words) - len(bare))
    return (before if listed or before.strip() else "") + marks + words


def _dedent(line: str, most: int) -> str:
    """A line without the spaces its fence was indented by, as far as it has them."""
    return line[min(most, _indent(line)) :]


def _indent(line: str) -> int:
    """Spaces at the start of a line."""
    return len(line) - len(line.lstrip(" "))


class Angles(Preprocessor):
    """`<` stays a tag only where a whole known tag stands; anywhere else it is a character."""

    def run(self, lines: list[str]) -> list[str]:
        """The lines for the package."""
        text = "\n".join(lines)
        return angles(text).split("\n") if "<" in text else lines
