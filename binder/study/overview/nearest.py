"""Words of the binders that are nearest to one that stands in none."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from binder.store.connection import Connection
from binder.store.search import vocabulary
from binder.study.overview.query import Query, folded

SHORTEST = 3
"""Letters a word needs to be told from another by one slip."""
MOST = 3
"""Words offered for one; and words looked at in what was typed."""


@dataclass(frozen=True, slots=True)
class Slip:
    """A word of no binder, one that is in them, and the typed words with that one in its place."""

    wrong: str
    meant: str
    mended: str

    @property
    def said(self) -> str:
        """'lantrn: did you mean lantern?'."""
        return f"{self.wrong}: did you mean {self.meant}?"


def slips(binders: Iterable[Connection], query: Query, typed: str) -> list[Slip]:
    """For each word that no binder has, the nearest that one of them has; likeliest first."""
    words = [word for word in re.findall(r"\w+", query.words) if len(word) >= SHORTEST]
    if not words:
        return []
    known: Counter[str] = Counter()
    for binder in binders:
        known.update(vocabulary(binder))
    unknown = [word for word in dict.fromkeys(words) if not _known(folded(word), known)]
    return [
        Slip(word, near, re.sub(rf"\b{re.escape(word)}\b", near, typed, count=1))
        for word in unknown[:MOST]
        for near in nearest(folded(word), known)
    ]


def _known(word: str, known: Counter[str]) -> bool:
    return word in known or any(one.startswith(word) for one in known)


def nearest(word: str, known: Counter[str], most: int = MOST) -> list[str]:
    """The known words within one slip of a short word and two of a longer one.

    A slip is a letter too many, too few, changed, or two that changed places; of equally near
    words the one in more leaves goes first.
    """
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    cutoff = 1 if len(word) < 6 else 2
    found = process.extract(
        word, known.keys(), scorer=OSA.distance, score_cutoff=cutoff, limit=None
    )
    near = sorted((slips, -known[one], one) for one, slips, _ in found)
    return [one for slips, _, one in near if slips == near[0][0]][:most]
