"""Precision and recall on the hand-labelled corpus; run with -s to see the figures.

The labels were set by hand, by somebody who had not seen the recogniser. `heldout_letters.txt` is
by other hands than the rest. Until the rules for numerals on a dial and for an opening title with a
comma, it was never used to adjust anything; those two were written with its mistakes in sight.
`letters_one.txt` is hard on purpose, with slips of the pen, shorthand and false friends in one
diary; the recogniser was tried on it while it was written. On `letters_two.txt` it scored 0.932 and
0.970 at first sight; its errors have been learnt from since, so it proves nothing any more.
`letters_by_cause.txt` is by the hand that wrote the rules, after them for its last third: it holds
what was won, and proves nothing either. `letters_fresh.txt`, 24 notebooks and letters by a hand
that had seen neither, came when all else stood and was never learnt from: what is held there is
what it scored at first sight, 0.941 and 0.914.
"""

from difflib import SequenceMatcher

import pytest

from binder.cards.prose import Lexicon, find
from binder.page.markup.markdown import to_html
from tests.cards import prose_corpus
from tests.cards.prose_corpus import leaves, lexicon, score

TUNED = ("diary.txt", "study_notes.txt", "saltings_deck.txt")
DEVELOPMENT = ("letters_one.txt",)
HELD_OUT = ("heldout_letters.txt",)
ONCE_UNTOUCHED = ("letters_two.txt",)
BY_CAUSE = ("letters_by_cause.txt",)
UNTOUCHED = ("letters_fresh.txt",)
EVERY = TUNED + DEVELOPMENT + HELD_OUT + ONCE_UNTOUCHED + BY_CAUSE + UNTOUCHED


def test_the_corpus_is_as_large_as_it_should_be():
    every = [leaf for name in EVERY for leaf in leaves(name)]
    assert sum(len(leaf.mentions) for leaf in every) >= 600
    assert sum(len(leaf.friends) for leaf in every) >= 500


@pytest.mark.parametrize(
    ("names", "precision", "recall"),
    [
        (TUNED, 0.985, 0.985),
        (DEVELOPMENT, 0.99, 0.98),
        (HELD_OUT, 0.97, 0.98),
        (ONCE_UNTOUCHED, 0.99, 0.98),
        (BY_CAUSE, 0.9, 0.95),
        (UNTOUCHED, 0.94, 0.91),
    ],
    ids=["tuned", "development", "held out", "once untouched", "by cause", "untouched"],
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


def test_nothing_is_linked_in_prose_that_names_no_card():
    """A walk of seven days with a sun, a tower, a hermit, five coins and three cups in it."""
    (leaf,) = leaves("no_cards.txt")
    assert len(leaf.text.split()) > 3000
    assert find(leaf.text, lexicon("letters")) == find(leaf.text, Lexicon()) == []


@pytest.mark.parametrize("name", EVERY)
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
        alike = SequenceMatcher(None, of_marks, of_words, autojunk=False).get_matching_blocks()
        differing += max(len(of_marks), len(of_words)) - sum(block.size for block in alike)
    assert differing <= total * 0.01
