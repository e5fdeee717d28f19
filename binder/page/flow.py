"""Line ends within paragraphs made spaces, so that a leaf can be written on at any width.

Text from elsewhere is often broken every eighty letters. Rendered it reads the same either way.
"""

import re

from binder.page.lines import Where
from binder.page.spans import Line, line

_ODD = re.compile(r"[|<]|^ {0,3}(?:=+|-+)[ \t]*$|^ {0,3}\[(?!\^)[^\]]*\]:")
"""Of a tag, a table, an underline or an address's own line the line ends mean something."""
_DEEP = re.compile(r"[ \t]")
_BEGINS = re.compile(r"=+[ \t]*$|[\[:]|[-_*]{2,}[ \t]*$|\d{1,9}\.|[-+*>#](?:[ \t]|$)")
_ENDS = re.compile(r"(?:  |\\)$")

_Lines = list[tuple[str, Line]]


def flowing(text: str) -> str:
    """The leaf with every paragraph on one line; code, tables, verse and lists keep their lines."""
    made: list[str] = []
    where, block = Where(), _Lines()
    for written in text.split("\n"):
        found, where = line(written, where)
        if found.role in ("blank", "code", "fence"):
            made += [*_joined(block), written]
            block = []
        else:
            block.append((written, found))
    return "\n".join([*made, *_joined(block)])


def _joined(block: _Lines) -> list[str]:
    """The lines between two gaps, as few as say the same."""
    above: Line | None = None
    made: list[str] = []
    if any(_ODD.search(written) for written, _ in block):
        return [written for written, _ in block]
    for written, found in block:
        if above and _joins(above, made[-1], found, written):
            made[-1] = f"{made[-1].rstrip()} {written[found.words :].lstrip()}"
            continue
        made.append(written)
        above = found
        if _DEEP.match(written) and found.role != "item":
            return [written for written, _ in block]
    return made


def _joins(above: Line, last: str, found: Line, written: str) -> bool:
    """Whether a line goes on with the paragraph of the line above it."""
    if found.role == "text":
        fits = above.role in ("text", "item", "note")
    else:
        fits = found.role == above.role == "quote" and found.level == above.level
    words = written[found.words :].strip()
    said = bool(words) and bool(last[above.words :].strip())
    return fits and said and not _ENDS.search(last) and not _BEGINS.match(words)
