"""A leaf line by line: what a line is depends on the lines above it, never on those below.

Rendering, ticking and the live styles of the editor all ask here, so they always agree on what
is code and which line holds which tick box.
"""

import re
from collections.abc import Iterator
from typing import Literal, NamedTuple

Kind = Literal["open", "code", "close", "text"]
"""The line that opens a fenced code block, one within, the one that closes it, any other."""

TICK = re.compile(r"([ \t>]*(?:[-*+]|\d{1,9}\.)[ \t]+)\[([ xX])\](?=\s|$)")
"""A list item that begins with a tick box: groups are all before it and what stands in it."""

HEADING = re.compile(r"((?: *(?:>|[-*+] |\d{1,9}\. ))* {0,3})(#+)(?:([ \t].*)|(.*))$")
"""A line whose words begin with #: what is before, the marks, then the words of a heading, or
words that make it none because no space stands between."""

ITEM = re.compile(r"[ \t]*(?:[-*+]|\d{1,9}\.)[ \t]")
_FENCE = re.compile(r"( *(?:(?:[-*+]|\d{1,9}\.) +)*)(?:(`{3,})[^`\s]*|(~{3,})[^\s]*) *$")
_END = re.compile(r"\r\n|\n|\r")


class Where(NamedTuple):
    """What the lines above say: the open fence ('' outside code), its indent, and the list."""

    fence: str = ""
    indent: int = 0
    listed: bool = False
    blank: bool = True


def step(line: str, where: Where) -> tuple[Kind, Where]:
    """What one line is, and what it means for the next. `line` comes without its line end."""
    if where.fence:
        closes = _ends(line.expandtabs(4), where)
        return ("close", where._replace(fence="", blank=False)) if closes else ("code", where)
    if "```" in line or "~~~" in line:
        match = _FENCE.match(line.expandtabs(4))
        begins = match is not None and not match[1].isspace() and match[1] != ""
        if match and (begins or len(match[1]) < 4 or where.listed):
            indent = len(match[1])
            inside = begins or (where.listed and indent > 1)
            return "open", Where(match[2] or match[3], indent, inside, False)
    return "text", _after(line, where)


def _ends(line: str, where: Where) -> bool:
    """Whether a line within fenced code closes it: a run at least as long, hardly indented."""
    bare = line.strip()
    if set(bare) != {where.fence[0]} or len(bare) < len(where.fence):
        return False
    return len(line) - len(line.lstrip()) < where.indent + 4


def _after(line: str, where: Where) -> Where:
    """Whether the list goes on after an ordinary line: words at the margin below a gap end it."""
    if not line or line.isspace():
        return where if where.blank else where._replace(blank=True)
    listed = bool(ITEM.match(line)) or (where.listed and (not where.blank or line[0] in " \t"))
    return Where(listed=listed, blank=False)


def split(text: str) -> Iterator[tuple[int, str]]:
    """The lines of a leaf with the index where each starts; any of the three line ends counts."""
    at = 0
    for match in _END.finditer(text):
        yield at, text[at : match.start()]
        at = match.end()
    yield at, text[at:]


def tick(text: str, index: int) -> str:
    """The leaf with one tick box turned over; every other character stays as it was.

    `index` is the number after `tick:` in the link of the box. Text without such a box comes
    back unchanged.
    """
    where, count = Where(), 0
    for at, line in split(text):
        kind, where = step(line, where)
        match = TICK.match(line) if kind == "text" else None
        if match is None:
            continue
        if count == index:
            place = at + match.start(2)
            return text[:place] + ("x" if match[2] == " " else " ") + text[place + 1 :]
        count += 1
    return text
