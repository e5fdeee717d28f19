import contextlib
import json
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles
from binder.errors import CanMend

FRENCH = next(deck for deck in TRADITIONS if "Reine" in deck.ranks)


def test_standard_titles() -> None:
    assert STANDARD.title("major-08") == "Strength"
    assert STANDARD.title("wands-03") == "Three of Wands"
    assert (STANDARD.number("major-08"), STANDARD.roman("major-11")) == (8, "XI")


def test_numbers_eight_and_eleven_change_places_with_the_deck() -> None:
    older = replace(STANDARD, eleven_is="strength")
    assert (older.number("major-08"), older.roman("major-08")) == (11, "XI")
    assert (older.number("major-11"), older.roman("major-11")) == (8, "VIII")
    assert older.title("major-08") == "Strength"


def test_a_suit_may_end_a_title_in_its_own_way() -> None:
    assert FRENCH.title("swords-12") == "Cavalier d'Épée"
    assert FRENCH.suit("swords") == "Épées"
    assert FRENCH.names()["cavalier d'épée"] == FRENCH.names()["cavalier d'epee"] == "swords-12"


def test_names_come_whole_without_article_and_with_a_digit() -> None:
    names = STANDARD.names()
    assert names["the star"] == names["star"] == "major-17"
    assert names["three of wands"] == names["3 of wands"] == "wands-03"
    assert "17" not in names


def test_a_deck_may_add_a_card_and_name_one_of_a_suit() -> None:
    deck = DeckTitles.from_dict(
        {
            "name": "Lantern Road",
            "own": {"wands-02": "Dominion"},
            "extras": {"extra-01": "The Ferry"},
        }
    )
    assert deck.title("wands-02") == "Dominion"
    assert deck.names()["two of wands"] == deck.names()["dominion"] == "wands-02"
    assert deck.keys[-1] == "extra-01"
    assert deck.card("extra-01").title == "The Ferry"
    assert (deck.number("extra-01"), deck.roman("extra-01")) == (-1, "")


@pytest.mark.parametrize("deck", TRADITIONS, ids=lambda deck: deck.name)
def test_a_deck_comes_back_from_json(deck: DeckTitles) -> None:
    assert DeckTitles.from_dict(json.loads(json.dumps(deck.to_dict()))) == deck


@pytest.mark.parametrize("deck", TRADITIONS, ids=lambda deck: deck.name)
def test_every_card_has_a_title_of_its_own(deck: DeckTitles) -> None:
    assert len({deck.title(key).casefold() for key in deck.keys}) == 78
    assert {deck.names()[deck.title(key).casefold()] for key in deck.keys} == set(deck.keys)


def test_traditions_have_names_of_their_own() -> None:
    assert TRADITIONS[0] == STANDARD
    assert len({deck.name for deck in TRADITIONS}) == len(TRADITIONS)


def test_what_a_deck_leaves_out_is_standard() -> None:
    assert DeckTitles.from_dict({"name": "Mine", "later": 3}) == replace(STANDARD, name="Mine")


BAD = [
    ({"trumps": ["The Fool"]}, "trumps are 22 titles"),
    (
        {"trumps": [*STANDARD.trumps[:21], "The Fool"]},
        "Two cards of this deck are called “The Fool”",
    ),
    ({"trumps": [*STANDARD.trumps[:21], " "]}, "A title in this deck is empty"),
    ({"suits": ["Cups", "Cups", "Swords", "Coins"]}, "Two cards"),
    ({"suits": "Cups"}, "suits are 4 titles"),
    ({"ranks": [1] * 14}, "A title in this deck is empty"),
    ({"endings": ["of"]}, "endings are 4 titles"),
    ({"name": ""}, "empty"),
    ({"eleven_is": "death"}, "either Justice or Strength"),
    ({"own": {"wands-77": "Dominion"}}, "no card “wands-77”"),
    ({"own": {"wands-02": None}}, "empty"),
    ({"extras": {"spare": "The Ferry"}}, "runs like extra-01"),
    ({"extras": 7}, "each need a key and a title"),
    ({"printed": "no"}, "say true or false"),
]


@pytest.mark.parametrize(("values", "sentence"), BAD, ids=lambda it: str(it)[:30])
def test_titles_that_cannot_be_say_what_to_mend(values: dict[str, object], sentence: str) -> None:
    with pytest.raises(CanMend, match=sentence):
        DeckTitles.from_dict(values)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner),
    max_leaves=6,
)
FIELDS = st.sampled_from(
    ["name", "eleven_is", "trumps", "suits", "endings", "ranks", "own", "extras", "printed"]
)


@given(st.dictionaries(FIELDS, JSON, max_size=4))
def test_any_json_makes_a_deck_or_one_sentence(values: dict[str, object]) -> None:
    with contextlib.suppress(CanMend):
        deck = DeckTitles.from_dict(values)
        assert [deck.title(key) for key in deck.keys]
        assert set(deck.names().values()) <= set(deck.keys)


def test_a_key_of_no_card_is_laid_under_its_words() -> None:
    plain = replace(STANDARD, printed=False)
    assert STANDARD.laid("wands-99", "Ninety-nine of Wands").title == "Ninety-nine of Wands"
    assert STANDARD.laid("wands-99").title == STANDARD.called("wands-99") == "wands-99"
    assert STANDARD.roman("wands-99") == ""
    assert STANDARD.laid("major-09") == STANDARD.card("major-09")
    assert plain.printed_on("major-09", "The Hermit") == ""
    assert plain.printed_on("wands-99", "") == "wands-99"
    assert STANDARD.printed_on("major-09", "The Hermit") == "The Hermit"
