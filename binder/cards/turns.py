"""Words and signs that say which way up a card lies, as they stand after it or before it."""

import re

SIGNS = "↓⇓⬇▼▽⤓℞"
REVERSED = frozenset(
    {"r", "rx", "rv", "rvs", "rvd", "rvsd", "rev", "revd", "rev'd", "reverse", "reversed"}
    | {"reversal", "inv", "inverse", "inverted", "upside down", "upsidedown", *SIGNS}
)
UPRIGHT = frozenset({"u", "up", "upright"})
GLUED = ("rev", "rx", "rv", "r")
"""What may follow a code without a space: 3wr, xviirx."""
BEFORE = frozenset(
    {"rev", "revd", "rev'd", "reverse", "reversed", "inverted", "upside down", "upsidedown"}
)
"""Those that are also written before their card."""
_ALL = re.compile(
    r"(?:all|both|each|every|everything|rest|others?)"
    r"(?: (?:of|the|them|these|cards?|one|is|are|were|was|came|out))*"
    rf" (?:{'|'.join(map(re.escape, sorted(REVERSED)))})"
)
_LIKE = ("reversed", "reverse", "inverted", "upside", "upsidedown", "upright")


def unmarked(text: str) -> tuple[str, bool | None]:
    """A folded text without the mark after it, and whether that turns it; None without a mark."""
    words = text.split(" ")
    for size in (2, 1):
        mark = " ".join(words[-size:])
        if len(words) > size and mark in REVERSED | UPRIGHT:
            return " ".join(words[:-size]), mark in REVERSED
    return text, None


def led(text: str) -> str:
    """What follows a mark of reversal at the head of a folded text; '' where there is none."""
    words = text.split(" ")
    sizes = (size for size in (2, 1) if " ".join(words[:size]) in BEFORE)
    return next((" ".join(words[size:]) for size in sizes), "")


def trailed(text: str) -> bool:
    """Whether a folded text ends with a mark that could as well belong to the card after it."""
    words = text.split(" ")
    return any(len(words) > size and " ".join(words[-size:]) in BEFORE for size in (1, 2))


def turns_all(text: str) -> bool:
    """Whether a folded text says that every card of a line is reversed, 'all reversed'."""
    return _ALL.fullmatch(text) is not None


def is_mark(text: str) -> bool:
    """Whether a folded text does nothing but turn a card, or all of them."""
    return text in REVERSED or text in UPRIGHT or turns_all(text)


def begun(text: str) -> bool:
    """Whether a folded text may become a mark as it is typed on."""
    marks = ("reversed", "inverted", "upright", "upside down")
    return len(text) > 1 and any(mark.startswith(text) for mark in marks)


def like_mark(text: str) -> bool:
    """Whether a folded text is a mark with a slip in it, or one that is still being typed."""
    if begun(text):
        return True
    if not 4 <= len(text) <= 14:
        return False
    from difflib import get_close_matches  # only a slip needs it, so the start does not wait

    return bool(get_close_matches(text.replace(" ", ""), _LIKE, n=1, cutoff=0.74))
