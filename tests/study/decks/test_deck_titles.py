"""Titles of a deck edited line by line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles
from binder.errors import CanMend
from binder.study.decks.deck_titles import add_extra, faults, lines, with_title, without_extra

FRENCH = next(deck for deck in TRADITIONS if deck.endings)
BY_KEY = {line.key: line for line in lines(FRENCH)}


def title(titles, key):
    return next(line.title for line in lines(titles) if line.key == key)


def test_every_title_has_its_line():
    assert len(lines(STANDARD)) == 22 + 4 + 14 + 56
    assert len(lines(FRENCH)) == len(lines(STANDARD)) + 4
    assert len(lines(add_extra(STANDARD, "The Tide"))) == len(lines(STANDARD)) + 1


def test_trumps_stand_in_the_order_the_deck_numbers_them():
    older = DeckTitles.from_dict({"eleven_is": "strength"})
    eighth, *_, eleventh = lines(older)[8:12]
    assert (eighth.key, eighth.usual) == ("major-11", "VIII  Justice")
    assert (eleventh.key, eleventh.usual) == ("major-08", "XI  Strength")


@pytest.mark.parametrize(
    ("key", "text", "usual"),
    [
        ("major-17", "The Pole Star", "The Star"),
        ("suit-wands", "Staves", "Wands"),
        ("rank-11", "Knave", "Page"),
        ("cups-13", "The Ferrywoman", "Queen of Cups"),
    ],
)
def test_a_title_is_changed_and_an_empty_one_brings_the_usual_back(key, text, usual):
    changed = with_title(STANDARD, key, f"  {text} ")
    assert title(changed, key) == text
    assert with_title(changed, key, "") == STANDARD
    assert title(STANDARD, key) == usual


def test_a_suits_word_goes_into_its_cards_unless_one_has_a_title_of_its_own():
    titles = with_title(STANDARD, "wands-03", "Trade")
    titles = with_title(titles, "suit-wands", "Staves")
    assert titles.title("wands-02") == "Two of Staves"
    assert titles.title("wands-03") == "Trade"


def test_a_title_typed_as_it_is_by_rank_and_suit_is_none_of_its_own():
    assert with_title(STANDARD, "wands-03", "Three of Wands").own == ()


def test_endings_follow_their_suit():
    assert BY_KEY["ending-swords"].title == "d'Épée"
    changed = with_title(FRENCH, "suit-swords", "Lames")
    assert changed.title("swords-12") == "Cavalier of Lames"
    changed = with_title(changed, "ending-swords", "de Lame")
    assert changed.title("swords-12") == "Cavalier de Lame"
    assert with_title(FRENCH, "suit-swords", FRENCH.suits[2]) == FRENCH


def test_extra_cards_come_and_go():
    titles = add_extra(add_extra(STANDARD, "The Tide"), "The Ebb")
    assert titles.extras == (("extra-01", "The Tide"), ("extra-02", "The Ebb"))
    titles = add_extra(without_extra(titles, "extra-01"), "The Flood")
    assert dict(titles.extras) == {"extra-02": "The Ebb", "extra-01": "The Flood"}
    with pytest.raises(CanMend, match="needs a title"):
        with_title(titles, "extra-01", " ")
    with pytest.raises(CanMend, match="needs a title"):
        add_extra(titles, "")


def test_titles_alike_are_told_on_both_cards():
    titles = with_title(STANDARD, "major-18", "the star")
    assert set(faults(titles)) == {"major-17", "major-18"}
    assert "“The Star”" in faults(titles)["major-18"]
    assert set(faults(add_extra(STANDARD, "Ace of Cups"))) == {"cups-01", "extra-01"}
    assert len(faults(with_title(STANDARD, "suit-wands", "Cups"))) == 28
    assert faults(STANDARD) == {}


def test_a_title_has_bounds():
    with pytest.raises(CanMend, match="more than 80 letters"):
        with_title(STANDARD, "major-17", "x" * 81)


KEYS = st.sampled_from([line.key for line in lines(STANDARD)])


@given(st.lists(st.tuples(KEYS, st.text(max_size=12)), max_size=8))
def test_titles_without_faults_are_titles_a_deck_can_keep(edits):
    titles = STANDARD
    for key, text in edits:
        titles = with_title(titles, key, text)
    if faults(titles):
        with pytest.raises(CanMend):
            DeckTitles.from_dict(titles.to_dict())
    else:
        assert DeckTitles.from_dict(titles.to_dict()) == titles
