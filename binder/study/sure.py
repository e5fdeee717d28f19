"""How sure one is of something, from per cent to words."""

from __future__ import annotations

STEP = 5
"""Per cent between one choice and the next."""

_WORDS = (
    (0, "surely not"),
    (15, "hardly"),
    (40, "doubtful"),
    (55, "even"),
    (70, "likely"),
    (85, "fairly sure"),
    (95, "very sure"),
    (100, "certain"),
)
"""Words up to and with a per cent; everyday English, chosen for this program."""


def words(per_cent: int) -> str:
    """Everyday words for 0 to 100 per cent: 50 is 'even', 80 'fairly sure'."""
    return next(said for most, said in _WORDS if per_cent <= most)
