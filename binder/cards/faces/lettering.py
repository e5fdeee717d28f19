"""Words on faces: fitted to their width without a font at hand, and safe inside SVG."""

import re
from html import escape

FAMILY = "Vollkorn"
_NO_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""What no SVG can hold (XML 1.0, section 2.2); a deck's titles may have been pasted with it."""

_NARROW = frozenset("ijlI.,:;'’!|()[] ‘`")
_SLIM = frozenset('fr-scetJ"“”/')
_BROAD = frozenset("mwMWÆŒ—@%")


def text_width(words: str, size: float) -> float:
    """About how wide words stand in the semi-bold letter of the faces; a little generous."""
    return size * sum(map(_letter, words))


def _letter(letter: str) -> float:
    if letter in _NARROW:
        return 0.31
    if letter in _SLIM:
        return 0.46
    if letter in _BROAD:
        return 0.94
    if ord(letter) > 0x2E80:
        return 1.0
    return 0.7 if letter.isupper() else 0.59


def text_svg(
    words: str,
    x: float,
    y: float,
    size: float,
    colour: str,
    anchor: str = "middle",
    *,
    weight: int = 600,
    slant: bool = False,
) -> str:
    """One line of text, its baseline at y."""
    italic = ' font-style="italic"' if slant else ""
    look = f'font-family="{FAMILY}" font-size="{size:.3g}" font-weight="{weight}"{italic}'
    return (
        f'<text x="{x:.4g}" y="{y:.4g}" {look} text-anchor="{anchor}" fill="{colour}">'
        f"{escape(_NO_XML.sub('', words))}</text>"
    )


def shortened(words: str, size: float, room: float) -> str:
    """The words cut with an ellipsis to stand within the room."""
    if text_width(words, size) <= room:
        return words
    while words and text_width(words + "…", size) > room:
        words = words[:-1]
    return words.rstrip() + "…"


def halves(words: str) -> tuple[str, str]:
    """Words broken at the blank nearest their middle; the second half may be empty."""
    blanks = [at for at, letter in enumerate(words) if letter == " "]
    if not blanks:
        return words, ""
    at = min(blanks, key=lambda blank: abs(blank - len(words) / 2))
    return words[:at], words[at + 1 :]


def title_svg(words: str, y: float, room: float, colour: str, largest: float = 13.2) -> str:
    """A title centred about x 50 with its middle near y: shrunk, then broken in two, then cut."""
    words = " ".join(words.split())
    wide = text_width(words, 1) or 1
    size = min(largest, room / wide)
    if size >= 0.68 * largest or " " not in words:
        size = max(size, 0.55 * largest)
        return text_svg(shortened(words, size, room), 50, y + size * 0.33, size, colour)
    pair = halves(words)
    size = max(min(0.8 * largest, room / max(text_width(half, 1) for half in pair)), 0.55 * largest)
    first, second = (shortened(half, size, room) for half in pair)
    return text_svg(first, 50, y - size * 0.18, size, colour) + text_svg(
        second, 50, y + size * 0.82, size, colour
    )
