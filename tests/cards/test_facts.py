import subprocess
import sys

import pytest

from binder.cards.facts import CARDS, SUITS, card
from binder.errors import CanMend


def test_cards_stand_in_the_order_of_the_deck() -> None:
    majors = [f"major-{number:02}" for number in range(22)]
    minors = [f"{suit}-{number:02}" for suit in SUITS for number in range(1, 15)]
    assert [each.key for each in CARDS] == majors + minors


def test_a_card_is_found_by_its_key() -> None:
    star = card("major-17")
    assert (star.number, star.roman, star.title, star.sky) == (17, "XVII", "The Star", "Aquarius")
    assert (star.arcana, star.suit, star.rank, star.element) == ("major", "", "", "")


def test_a_minor_carries_suit_rank_and_element() -> None:
    page = card("cups-11")
    assert (page.title, page.number, page.roman) == ("Page of Cups", 11, "")
    assert (page.suit, page.rank, page.element, page.septenary) == ("cups", "page", "Water", 0)


@pytest.mark.parametrize("key", ["", "major-22", "wands-00", "wands-15", "coins-03", "Major-01"])
def test_an_unknown_key_is_named_in_one_sentence(key: str) -> None:
    with pytest.raises(CanMend, match=f"no card “{key}”"):
        card(key)


def test_only_majors_that_are_an_element_carry_one() -> None:
    assert {each.key: each.element for each in CARDS[:22] if each.element} == {
        "major-00": "Air",
        "major-12": "Water",
        "major-20": "Fire",
    }


def test_knowing_the_cards_loads_no_screen_and_no_database() -> None:
    code = "import sys, binder.cards.facts; print(*sorted(sys.modules))"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = {name.partition(".")[0] for name in run.stdout.split()}
    assert not loaded & {"PySide6", "peewee", "sqlite3", "ui"}
