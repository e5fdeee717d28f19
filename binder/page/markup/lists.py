"""Nested lists written with two or three spaces, brought to the four that the package asks for.

People indent what belongs to an item as far as the item's own words, which is two places for a
bullet and three for a number. The package counts in fours, as the syntax of 2004 does. What is
already in fours stays as it is.
"""

import re
from typing import NamedTuple

ITEM = re.compile(r"( *)([-*+]|\d{1,9}\.)( +)(?=\S)")
STEP = 4
"""Spaces for each level of nesting."""


class _Item(NamedTuple):
    """One list item still open: where its marker stands, where its words start, its kind."""

    indent: int
    content: int
    numbered: bool


class Levels:
    """The open list items above the line being read."""

    def __init__(self) -> None:
        self.items: list[_Item] = []
        self.changed = False
        """Whether the last item began a list of the other kind at the same depth."""

    def placed(self, line: str, *, listed: bool, blank: bool) -> str:
        """The line with the indent that says the same in fours.

        `listed` is whether the lines above leave a list open, `blank` whether a gap is above.
        """
        self.changed = False
        if not listed:
            self.items.clear()
        match = ITEM.match(line)
        if match:
            return self.item(line, match, blank)
        if blank and self.items and line.startswith("  "):
            return self.further(line)
        return line

    def item(self, line: str, match: re.Match[str], blank: bool) -> str:
        """A line that begins an item."""
        indent = len(match[1])
        above = [item for item in self.items if indent >= item.content]
        limit = above[-1].content if above else 0
        if indent >= limit + STEP:
            return line
        deeper = len(above) == len(self.items) > 0
        numbered = match[2] not in "-*+"
        beside = self.items[len(above) : len(above) + 1]
        changed = bool(beside) and beside[0].numbered != numbered
        if (deeper or changed) and not blank and numbered and match[2] != "1.":
            return line
        self.changed = changed
        content = indent + min(STEP, len(match[2]) + len(match[3]))
        self.items = [*above, _Item(indent, content, numbered)]
        return " " * (STEP * len(above)) + line[indent:]

    def further(self, line: str) -> str:
        """A line below a gap that goes on with one of the open items."""
        indent = len(line) - len(line.lstrip(" "))
        depth = self.depth(indent)
        if not depth:
            return line
        owner = self.items[depth - 1]
        del self.items[depth:]
        if owner.indent == STEP * (depth - 1) and indent >= STEP * depth:
            return line
        return " " * (STEP * depth + indent - owner.content) + line[indent:]

    def depth(self, indent: int) -> int:
        """How many of the open items something indented so far belongs to."""
        return sum(indent >= item.content for item in self.items)
