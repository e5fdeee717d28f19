"""Two states of a text: what changed between them, for the eye and for the file.

The comparison is `difflib`'s (after Ratcliff and Obershelp, "Pattern Matching: The Gestalt
Approach", Dr. Dobb's Journal, July 1988), word by word.
"""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Sequence
from dataclasses import dataclass

SAME, GONE, NEW = "same", "gone", "new"
_MOST_WORDS = 6000
"""Beyond so many words the changed stretch counts as one, since comparing takes their product."""
_WORDS = re.compile(r"\w+|\s+|[^\w\s]")
_DEFLATE = -15
_APART = 24
"""So many characters cost less packed than the two numbers of another change."""

Hunk = tuple[int, int, str]
"""In place of the characters from start to end (exclusive) of the old text stands another text."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of text: `how` is SAME, GONE (only in the old) or NEW (only in the new)."""

    how: str
    text: str


def pieces(old: str, new: str) -> list[Piece]:
    """Both texts in one, in reading order; what is gone stands before what is new."""
    found, at = [], 0
    for start, end, put in hunks(old, new):
        parts = ((SAME, old[at:start]), (GONE, old[start:end]), (NEW, put))
        found += [Piece(how, text) for how, text in parts if text]
        at = end
    return [*found, Piece(SAME, old[at:])] if old[at:] else found


def hunks(old: str, new: str, apart: int = 2) -> list[Hunk]:
    """What to put where in `old` to make it `new`, from the beginning on.

    Changes with fewer than `apart` characters between them count as one.
    """
    start = _alike(old, new)
    end = _alike(old[start:][::-1], new[start:][::-1])
    # A word that changed in part has changed, so the stretch begins and ends between words.
    start = _between_words(old, new, start)
    end = _between_words(old[::-1], new[::-1], end)
    before, after = old[start : len(old) - end], new[start : len(new) - end]
    a, b = _WORDS.findall(before), _WORDS.findall(after)
    if not a or not b or len(a) + len(b) > _MOST_WORDS:
        return [(start, start + len(before), after)] if before or after else []
    return _joined(old, _placed(a, b, start), apart)


def _alike(old: str, new: str) -> int:
    """How many characters both begin with."""
    pairs = enumerate(zip(old, new, strict=False))
    return next((at for at, (a, b) in pairs if a != b), min(len(old), len(new)))


def _between_words(old: str, new: str, at: int) -> int:
    """The last place up to `at`, where both texts are alike, that parts no word of either."""
    while at > 0 and any(_within(text, at) for text in (old, new)):
        at -= 1
    return at


def _within(text: str, at: int) -> bool:
    return at < len(text) and text[at - 1].isalnum() and text[at].isalnum()


def _placed(a: Sequence[str], b: Sequence[str], start: int) -> list[Hunk]:
    places = [start]
    for word in a:
        places.append(places[-1] + len(word))
    import difflib  # slow to import, and seldom wanted

    codes = difflib.SequenceMatcher(None, a, b, autojunk=False).get_opcodes()
    return [
        (places[i1], places[i2], "".join(b[j1:j2]))
        for tag, i1, i2, j1, j2 in codes
        if tag != "equal"
    ]


def _joined(old: str, changes: Sequence[Hunk], apart: int) -> list[Hunk]:
    found: list[Hunk] = []
    for start, end, put in changes:
        if found and start - found[-1][1] < apart:
            first, last, before = found.pop()
            found.append((first, end, before + old[last:start] + put))
        else:
            found.append((start, end, put))
    return found


def patched(old: str, changes: Sequence[Hunk]) -> str:
    """The new text, from the old one and its hunks."""
    parts, at = [], 0
    for start, end, put in changes:
        parts += [old[at:start], put]
        at = end
    return "".join((*parts, old[at:]))


def packed(text: str, base: str | None) -> bytes:
    """A text as small as it goes: against the text before it, or whole where that is smaller."""
    whole = b"w" + _deflated(text)
    if base is None:
        return whole
    changes = hunks(base, text, _APART)
    said = json.dumps(changes, ensure_ascii=False, separators=(",", ":"))
    delta = b"z" + _deflated(said, _bytes(base))
    return min(delta, whole, key=len)


def unpacked(data: bytes, base: str) -> str:
    """The text again; `base` is what it was packed against. ValueError for anything else."""
    if data[:1] not in (b"w", b"d", b"z"):
        raise ValueError("no packed text")
    reader = zlib.decompressobj(_DEFLATE, _bytes(base) if data[:1] == b"z" else b"")
    try:
        said = reader.decompress(data[1:]).decode("utf-8", "surrogatepass")
    except zlib.error as error:
        raise ValueError("no packed text") from error
    if not reader.eof:
        raise ValueError("no whole packed text")
    return said if data[:1] == b"w" else patched(base, json.loads(said))


def _deflated(text: str, known: bytes = b"") -> bytes:
    """`known` is what the text may repeat words of; it is needed again to read it."""
    packer = zlib.compressobj(9, zlib.DEFLATED, _DEFLATE, zdict=known)
    return packer.compress(_bytes(text)) + packer.flush()


def _bytes(text: str) -> bytes:
    return text.encode("utf-8", "surrogatepass")
