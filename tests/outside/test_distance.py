"""How far two words lie apart, against distances that others published.

kitten/sitting: 3 (Wikipedia, "Levenshtein distance", its first example); intention/execution: 5
where each change counts one (Jurafsky and Martin, Speech and Language Processing, "Minimum Edit
Distance"). A swap of neighbours counts one slip, as Damerau counted it (A technique for computer
detection and correction of spelling errors, Communications of the ACM 7, 1964).
"""

from collections import Counter

import pytest
from rapidfuzz.distance import OSA

from binder.study.overview.nearest import nearest


@pytest.mark.parametrize(
    ("one", "other", "slips"),
    [("kitten", "sitting", 3), ("intention", "execution", 5), ("quya", "quay", 1)],
)
def test_published_distances(one, other, slips):
    assert OSA.distance(one, other) == slips


def test_three_slips_are_too_many_to_offer_a_word():
    assert nearest("kitten", Counter(["sitting", "execution"])) == []
