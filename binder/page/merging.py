"""Two texts that grew from one, put together: what two windows wrote on the same leaf."""

from __future__ import annotations

from itertools import pairwise

from binder.page.compare import Hunk, hunks, patched


def together(before: str, here: str, there: str) -> str | None:
    """`before` with what was changed in `here` and in `there`; None where both changed one place.

    Words that both put into the same gap stand one after the other, `there` first.
    """
    made: list[Hunk] = []
    for change in sorted(dict.fromkeys([*hunks(before, there), *hunks(before, here)]), key=_where):
        if made and change[0] == change[1] and made[-1][:2] == change[:2]:
            made[-1] = (change[0], change[1], made[-1][2] + change[2])
        else:
            made.append(change)
    if any(after[0] < one[1] or after[:2] == one[:2] for one, after in pairwise(made)):
        return None
    return patched(before, made)


def _where(change: Hunk) -> tuple[int, int]:
    return change[:2]
