"""What changed between two texts, against difflib's own documentation and its other renderings.

`difflib` is Python's; its method is Ratcliff and Obershelp, "Pattern Matching: The Gestalt
Approach", Dr. Dobb's Journal, July 1988. Our own part is the trimming of what both texts begin and
end with, and the joining of near changes.
"""

import difflib
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.compare import GONE, NEW, SAME, hunks, patched, pieces

CARDS = ["star", "tower", "jug", "quay", "kiln"]
WORDS = st.lists(st.sampled_from(CARDS), max_size=24).map(" ".join)


def told(old, new):
    return [(one.how, one.text) for one in pieces(old, new)]


def test_the_worked_example_of_the_documentation():
    """SequenceMatcher.get_opcodes, Python library reference: qabxcd to abycdf.

    delete q; equal ab; replace x by y; equal cd; insert f. Letters stand here as words.
    """
    assert told("q a b x c d", "a b y c d f") == [
        (GONE, "q "), (SAME, "a b "), (GONE, "x"), (NEW, "y"), (SAME, " c d"), (NEW, " f"),
    ]  # fmt: skip


def test_the_pair_of_the_article():
    """The ratio of WIKIMEDIA and WIKIMANIA, twice 7 letters alike of 18: a usual example of the
    method (common practice). The letters marked as the same are those 7.
    """
    marks = told(" ".join("WIKIMEDIA"), " ".join("WIKIMANIA"))
    letters = [letter for how, text in marks if how == SAME for letter in text if letter != " "]
    assert 2 * len(letters) / 18 == pytest.approx(14 / 18)


def longest(a, b):
    """Length of the longest common subsequence: Wagner and Fischer, "The String-to-String
    Correction Problem", Journal of the ACM 21, 1974.
    """
    row = [0] * (len(b) + 1)
    for one in a:
        before, row = row, [0]
        for n, other in enumerate(b):
            row.append(before[n] + 1 if one == other else max(row[n], before[n + 1]))
    return row[-1]


@given(WORDS, WORDS)
def test_what_is_the_same_is_common_to_both_and_no_longer_than_can_be(old, new):
    same = "".join(one.text for one in pieces(old, new) if one.how == SAME)
    a, b, c = (re.findall(r"\w+|\s", text) for text in (old, new, same))
    assert longest(c, a) == longest(c, b) == len(c) <= longest(a, b)


@given(WORDS, WORDS)
def test_both_texts_can_be_taken_from_the_marks_as_with_ndiff(old, new):
    """`difflib.restore` gives either text from an ndiff; our marks give the same two."""
    delta = list(difflib.ndiff(old.split(), new.split()))
    said = pieces(old, new)
    theirs = [" ".join(difflib.restore(delta, which)) for which in (1, 2)]
    ours = ["".join(one.text for one in said if one.how != left) for left in (NEW, GONE)]
    assert ours == theirs
    assert patched(old, hunks(old, new)) == new
