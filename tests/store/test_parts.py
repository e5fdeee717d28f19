"""The rows that belong to one leaf."""

from binder.store.parts import parts
from binder.store.schema import OwnWords
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves, tabs


def test_rows_of_one_leaf_in_the_order_asked_for(binder):
    tab = tabs.tab(binder, "Notes")
    star = leaves.add_leaf(binder, tab, "The Star", kind=LeafKind.CARD, card="major-17")
    moon = leaves.add_leaf(binder, tab, "The Moon", kind=LeafKind.CARD, card="major-18")
    words.write_words(binder, star, "upright", "Later.", at="2026-05-02T10:00:00")
    words.write_words(binder, star, "reversed", "Earlier.", at="2026-05-01T10:00:00")
    words.write_words(binder, moon, "upright", "Another card's.")
    rows = parts(binder, OwnWords, star, "t.at, t.id")
    assert [(row.card, row.way, row.text) for row in rows] == [
        ("major-17", "reversed", "Earlier."),
        ("major-17", "upright", "Later."),
    ]
    assert set(rows[0]._fields) == set(OwnWords._meta.columns)
