"""Text as Qt counts it: a letter beyond the first 65,536 takes two places, in Python one."""

from __future__ import annotations

import sys
from array import array

_ORDER = "utf-16-le" if sys.byteorder == "little" else "utf-16-be"


def units(text: str) -> str:
    """The text with such a letter as its two halves, so that places agree with Qt's."""
    if text.isascii() or max(text, default="") <= "\uffff":
        return text
    return "".join(map(chr, array("H", text.encode(_ORDER, "surrogatepass"))))


def whole(text: str) -> str:
    """The text with its halves made whole again; a half without its other one is replaced."""
    if text.isascii():
        return text
    return text.encode(_ORDER, "surrogatepass").decode(_ORDER, "replace")
