"""Line ends within paragraphs made spaces, so that a leaf can be written on at any width.

Text from elsewhere is often broken every eighty letters. Rendered it reads the same either way.
"""

import re

from binder.page.editing.spans import SpannedLine, line
from binder.page.lines import Where

_ODD = re.compile(r"[|<]|^ {0,3}(?:=+|-+)[ \t]*$|^ {0,3}\[(?!\^)[^\]]*\]:")
"""Of a tag, a table, an underline or an address's own line the line ends mean something."""
_DEEP = re.compile(r"[ \t]")
_BEGINS = re.compile(r"=+[ \t]*$|[\[:]|[-_*]{2,}[ \t]*$|\d{1,9}\.|[-+*>#](?:[ \t]|$)")
_ENDS = re.compile(r"(?:  |\\)$")

_Lines = list[tuple[str, SpannedLine]]


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
    lines = [written for written, _ in block]
    if any(_ODD.search(written) for written in lines):
        return lines
    above, said, last = SpannedLine("blank", 0, 0, ()), False, ""
    made: list[list[str]] = []
    for written, found in block:
        if said and _joins(above, last, found, written):
            made[-1] += [" ", written[found.words :].lstrip()]
            made[-1][-3] = made[-1][-3].rstrip()
        elif _DEEP.match(written) and found.role != "item":
            return lines
        else:
            made.append([written])
            above, said = found, bool(written[found.words :].strip())
        last = written
    return ["".join(pieces) for pieces in made]


def _joins(above: SpannedLine, last: str, found: SpannedLine, written: str) -> bool:
    """Whether a line goes on with the paragraph of the line above it."""
    if found.role == "text":
        fits = above.role in ("text", "item", "note")
    else:
        fits = found.role == above.role == "quote" and found.level == above.level
    words = written[found.words :].strip()
    return fits and bool(words) and not _ENDS.search(last[-2:]) and not _BEGINS.match(words)
