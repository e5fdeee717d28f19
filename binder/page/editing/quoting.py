"""Quotations and where they are from: a block quote with a link to its source as its last line."""

import re
from collections.abc import Iterator

from binder.page.editing.edit import Edit, replaced, touched

_QUOTED = re.compile(r"^ {0,3}>", re.MULTILINE)
_LINK = re.compile(r"\]\((?:source|leaf|https?|mailto):")
_FENCE = re.compile(r"^ {0,3}(```|~~~)")


def quoted(text: str, start: int, end: int, address: str, label: str, who: str) -> Edit:
    """Make the lines of a selection, or the quote around it, a quotation that says where it is
    from: 'who, label', of which the label is a link. The cursor goes behind it.
    """
    first, last = _around(text, *touched(text, start, end))
    lines = text[first:last].split("\n")
    if not all(map(_is_quoted, lines)):
        lines = [f"> {line}".rstrip(" ") for line in lines]
    said = f"> {who}, [{label}]({address})" if who else f"> [{label}]({address})"
    empty = not any(line.strip(" >") for line in lines)
    made = "\n".join([*(["> "] if empty else lines), ">", said])
    before = "\n" if first and text[first - 2 : first] != "\n\n" else ""
    after = "\n" if text[last : last + 2].strip("\n") else ""
    cursor = first + len(before) + (2 if empty else len(made))
    return replaced(first, text[first:last], before + made + after, cursor, cursor)


def _around(text: str, first: int, last: int) -> tuple[int, int]:
    """The lines, and those of the same quote above and below where they are quoted already."""
    if not all(map(_is_quoted, text[first:last].split("\n"))):
        return first, last
    while first and _is_quoted(text[text.rfind("\n", 0, first - 1) + 1 : first - 1]):
        first = text.rfind("\n", 0, first - 1) + 1
    while last < len(text):
        end = text.find("\n", last + 1)
        end = len(text) if end < 0 else end
        if not _is_quoted(text[last + 1 : end]):
            break
        last = end
    return first, last


def _is_quoted(line: str) -> bool:
    return _QUOTED.match(line) is not None


def quotes(text: str) -> Iterator[str]:
    """The block quotes of a text, one after the other, as they are written."""
    gathered: list[str] = []
    fenced = False
    for line in text.split("\n"):
        fenced ^= _FENCE.match(line) is not None
        if not fenced and _is_quoted(line):
            gathered.append(line)
        elif gathered:
            yield "\n".join(gathered)
            gathered = []
    if gathered:
        yield "\n".join(gathered)


def unsourced(text: str) -> list[str]:
    """The quotes with words in them that do not say where they are from."""
    if ">" not in text:
        return []
    return [quote for quote in quotes(text) if quote.strip("> \n") and not _LINK.search(quote)]
