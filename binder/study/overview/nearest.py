"""Words of the binders that are nearest to one that stands in none."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from binder.store.connection import Connection
from binder.store.search import has_word, vocabulary
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


def slips(binders: Sequence[Connection], query: Query, typed: str) -> list[Slip]:
    """For each word that no binder has, the nearest that one of them has; likeliest first."""
    words = [word for word in re.findall(r"\w+", query.words) if len(word) >= SHORTEST]
    unknown = [
        word
        for word in dict.fromkeys(words)
        if not any(has_word(binder, folded(word)) for binder in binders)
    ][:MOST]
    known: Counter[str] = Counter()
    for binder in binders if unknown else ():
        known.update(vocabulary(binder))
    return [
        Slip(word, near, re.sub(rf"\b{re.escape(word)}\b", near, typed, count=1))
        for word in unknown
        for near in nearest(folded(word), known)
    ]


def nearest(word: str, known: Mapping[str, int], most: int = MOST) -> list[str]:
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
