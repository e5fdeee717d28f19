"""With a deck of other names, the leaf of a card is found by the name that stands on it.

That old packs say Coins and Batons where newer ones say Pentacles and Wands is common practice.
"""

from dataclasses import replace

import pytest

from binder.cards.titles import STANDARD, TRADITIONS
from binder.store.search import OPEN, SHUT
from binder.study.decks import decks
from binder.study.leaves import leaves, tabs
from binder.study.overview import picking
from binder.study.overview.called import called
from binder.study.overview.finding import count_all, find_all, plain_line

COINS = next(deck for deck in TRADITIONS if deck.suits == ("Batons", "Cups", "Swords", "Coins"))


@pytest.fixture
def coins(course_shelf):
    decks.register(course_shelf.binders[0], "A deck that says Coins", COINS, favourite=True)
    return course_shelf


def hits(shelf, words):
    return [hit for group in find_all(shelf, words).groups for hit in group.hits]


def titles(shelf, words):
    return [plain_line(hit.title) for hit in hits(shelf, words)]


@pytest.mark.parametrize("words", ["Two of Coins", "two coins", "coins two", "two of coi"])
def test_the_leaf_is_found_by_the_name_the_deck_gives_it(coins, words):
    found = hits(coins, words)
    assert plain_line(found[0].title) == "Two of Coins (Two of Pentacles)"
    assert f"{OPEN}Coins{SHUT}" in found[0].title
    assert count_all(coins, words) == len(found)


def test_the_standard_title_finds_it_as_before(coins):
    assert titles(coins, "Two of Pentacles")[0] == "Two of Coins (Two of Pentacles)"


def test_a_word_of_the_name_goes_with_words_of_the_leaf(coins):
    binder = coins.binders[0]
    leaf = next(hit.uid for hit in hits(coins, "nine of coins"))
    leaves.write(binder, leaf, title="Nine of Pentacles", text="A lighthouse stands behind her.")
    assert titles(coins, "coins lighthouse") == ["Nine of Coins (Nine of Pentacles)"]
    assert titles(coins, "lighthouse coins") == ["Nine of Coins (Nine of Pentacles)"]
    assert titles(coins, "coins zanzibar") == []


def test_a_word_of_both_titles_brings_no_card_to_the_top(coins):
    binder = coins.binders[0]
    leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "Two two two", "two")
    assert titles(coins, "two")[0] == "Two two two"


def test_found_once_though_its_text_says_the_name_too(coins):
    binder = coins.binders[0]
    leaf = next(hit.uid for hit in hits(coins, "nine of coins"))
    leaves.write(binder, leaf, title="Nine of Pentacles", text="Nine of Coins, written out.")
    found = [hit.uid for hit in hits(coins, "nine of coins")]
    assert found.count(leaf) == 1
    assert count_all(coins, "nine of coins") == len(found)


@pytest.mark.parametrize("words", ['"two of coins"', "two -coins", "", "  ", "zanzibar", "the of"])
def test_a_phrase_or_a_word_left_out_is_matched_as_it_stands(words):
    assert called(words, COINS) == ()


def test_an_article_of_a_deck_is_no_name():
    """Of a trump called 'The Reaper', 'the' says nothing."""
    deck = replace(STANDARD, trumps=(*STANDARD.trumps[:13], "The Reaper", *STANDARD.trumps[14:]))
    assert called("the", deck) == ()
    assert [one.cards for one in called("the reaper", deck)] == [("major-13",)]


def test_a_link_is_made_by_either_name(coins):
    leaf = next(hit.uid for hit in hits(coins, "two of coins"))
    for words in ("two of coins", "two of pent"):
        found = picking.leaves(coins, words)
        assert found[0].address.endswith(leaf)
        assert found[0].label == "Two of Coins"
    assert [one.label for one in picking.cards(COINS, "two pent")] == ["Two of Coins"]
    assert [one.label for one in picking.cards(COINS, "two coins")] == ["Two of Coins"]
