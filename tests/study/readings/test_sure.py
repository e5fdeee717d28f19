"""How sure, in words."""

from itertools import groupby

import pytest

from binder.study import sure


@pytest.mark.parametrize(
    ("per_cent", "said"),
    [(0, "surely not"), (50, "even"), (70, "likely"), (75, "fairly sure"), (100, "certain")],
)
def test_words_for_a_per_cent(per_cent, said):
    assert sure.words(per_cent) == said


def test_each_word_stands_for_one_stretch():
    said = [name for name, _ in groupby(sure.words(n) for n in range(101))]
    assert len(said) == len(set(said))
