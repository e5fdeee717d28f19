"""Precision and recall on the hand-labelled corpus; run with -s to see the figures.

The labels were set by hand before the recogniser was written. `heldout_letters.txt` is by other
hands than the rest and was never used to adjust anything: it tells how well the rest carries over.
"""

import pytest

from binder.page.markup.markdown import to_html
from tests.cards import prose_corpus
from tests.cards.prose_corpus import leaves, lexicon, score

TUNED = ("diary.txt", "study_notes.txt", "saltings_deck.txt")
HELD_OUT = ("heldout_letters.txt",)


def test_the_corpus_is_as_large_as_it_should_be():
    every = [leaf for name in TUNED + HELD_OUT for leaf in leaves(name)]
    assert sum(len(leaf.mentions) for leaf in every) >= 330
    assert sum(len(leaf.friends) for leaf in every) >= 330


@pytest.mark.parametrize(
    ("names", "precision", "recall"),
    [(TUNED, 0.975, 0.98), (HELD_OUT, 0.95, 0.97)],
    ids=["tuned", "held out"],
)
def test_precision_and_recall(names, precision, recall, capsys):
    got = score(*names)
    with capsys.disabled():
        print(
            f"\n{', '.join(names)}: precision {got.precision:.3f}, recall {got.recall:.3f}"
            f" ({got.right} of {got.labelled} mentions found, {len(got.wrong)} linked wrongly;"
            f" {got.friends_linked} of {got.friends} false friends linked)"
        )
    assert got.precision >= precision, got.wrong
    assert got.recall >= recall, got.missed


@pytest.mark.parametrize("name", TUNED + HELD_OUT)
def test_the_rendered_leaf_gets_the_same_links_as_its_markdown(name):
    """The renderer hands over bare words; losing the marks must change next to nothing."""
    differing = total = 0
    for leaf in leaves(name):
        of_words = []

        def link(text, kept=of_words):
            found = prose_corpus.find(text, lexicon(name))
            kept.extend(each.key for each in found)
            return found

        to_html(leaf.text, link_cards=link)
        of_marks = [each.key for each in prose_corpus.find(leaf.text, lexicon(name))]
        total += len(of_marks)
        differing += abs(len(of_marks) - len(of_words)) + sum(
            one != other for one, other in zip(of_marks, of_words, strict=False)
        )
    assert differing <= total * 0.01
