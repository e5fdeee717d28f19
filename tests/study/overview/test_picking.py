"""What there is to link to."""

import pytest

from binder.cards.titles import STANDARD
from binder.store.file import create
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from binder.study.overview import picking
from binder.study.overview.picking import Choice
from binder.study.sources import sources


def labels(found):
    return [choice.label for choice in found]


def test_all_78_cards_for_no_words():
    assert len(picking.cards(STANDARD, "")) == 78


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("sta", ["The Star"]),
        ("que cu", ["Queen of Cups"]),
        ("the her", ["The Hermit"]),
        ("3w", ["Three of Wands"]),
        ("zzz", []),
    ],
)
def test_cards_by_a_few_letters(words, expected):
    assert labels(picking.cards(STANDARD, words))[: len(expected) or 1] == expected


@pytest.fixture
def filled(course_shelf):
    practice = course_shelf.binder("Practice")
    tab = tabs.tab(practice, "Methods")
    leaves.add_leaf(practice, tab, "Reversals, five ways", "the kiln")
    leaves.add_leaf(practice, tab, "The kiln log", "reversals")
    sources.new_source(course_shelf, "Perpetua Lisle", "Upside Down")
    sources.new_source(course_shelf, "Orla Tenpenny", "Cards at the Kitchen Table")
    return course_shelf


def test_leaves_by_their_titles_only(filled):
    found = picking.leaves(filled, "revers")
    assert [(one.label, one.note) for one in found] == [("Reversals, five ways", "Methods")]
    assert found[0].address.startswith("leaf:")
    assert labels(picking.leaves(filled, "five kiln")) == []
    assert picking.leaves(filled, "") == picking.leaves(filled, "§") == []
    assert picking.leaves(filled, "kiln", stop=lambda: True) == []


def test_the_best_leaf_of_all_binders_comes_first(shelf):
    """A title that is the word alone says more of it than one of eleven words: longer texts weigh
    less in every ranking of the BM25 family. Both binders hold as many leaves, one with the word.
    """
    long = "The kiln on the quay and what was said of it by others"
    for name, title in (("Alder", long), ("Birch", "Kiln")):
        binder = create(shelf.path / f"{name}.ringbound", name, "spineP")
        tabs.add_tab(binder, "Notes", "plain")
        for other in (title, "Reversals", "Numbers", "Colours", "Houses"):
            leaves.add_leaf(binder, tabs.tab(binder, "Notes"), other, "")
        binder.close()
    both = Shelf(shelf.path)
    assert [binder.name for binder in both.binders] == ["Alder", "Birch"]
    assert labels(picking.leaves(both, "kiln")) == ["Kiln", long]
    both.close()


def test_a_binder_that_cannot_be_read_stops_no_search(filled):
    filled.binder("Foundations").db.execute_sql("DROP TABLE leaf_find")
    assert labels(picking.leaves(filled, "kiln")) == ["The kiln log"]


def test_sources_by_author_or_title(filled):
    assert labels(picking.source_choices(filled, "")) == [
        "Cards at the Kitchen Table", "Upside Down",
    ]  # fmt: skip
    assert labels(picking.source_choices(filled, "lis")) == ["Upside Down"]
    assert labels(picking.source_choices(filled, "kitch tenp")) == ["Cards at the Kitchen Table"]


@pytest.mark.parametrize(
    ("locator", "address", "label"),
    [
        ("", "source:lisle", "Upside Down"),
        ("112", "source:lisle#p112", "p. 112"),
        ("p. 112", "source:lisle#p112", "p. 112"),
        ("12–14", "source:lisle#p12-14", "p. 12–14"),
        ("ch. 3 (end)", "source:lisle#ch3end", "ch. 3 (end)"),
        ("!", "source:lisle", "!"),
    ],
)
def test_a_place_in_a_source(locator, address, label):
    made = picking.cited(Choice("source:lisle", "Upside Down"), locator)
    assert (made.address, made.label) == (address, label)
