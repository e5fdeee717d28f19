"""A number and its noun agree."""

import re
from pathlib import Path

import pytest

from binder.counting import counted, noun_for, spelled, spelled_out

ROOT = Path(__file__).parents[1]
BY_HAND = re.compile(
    r"[\"']s[\"'] if|[\"'][\"'] if [\w.()]+ == 1 else [\"']"
    r"|[\"'](1 )?([a-z ]+)[\"'] if [\w.()]+ == 1 else f?[\"']({[\w.]+} )?(\2s|leaves|entries)"
)


@pytest.mark.parametrize(
    ("number", "one", "said"),
    [
        (0, "card", "0 cards"),
        (1, "card", "1 card"),
        (2, "card", "2 cards"),
        (1, "leaf", "1 leaf"),
        (12, "leaf", "12 leaves"),
        (3, "entry", "3 entries"),
        (1, "earlier version", "1 earlier version"),
        (4, "more source", "4 more sources"),
        (21, "day", "21 days"),
    ],
)
def test_a_number_with_its_noun(number, one, said):
    assert counted(number, one) == said


def test_verbs_and_words_that_are_given():
    assert [noun_for(n, "is") for n in (0, 1, 2)] == ["are", "is", "are"]
    assert [noun_for(n, "waits", "wait") for n in (1, 5)] == ["waits", "wait"]


def test_small_numbers_in_words():
    assert [spelled(n) for n in (0, 1, 10, 12, 13)] == ["none", "one", "ten", "twelve", "13"]
    assert spelled_out(1, "card") == "one card"
    assert spelled_out(10, "place") == "ten places"
    assert spelled_out(78, "card") == "78 cards"


def test_no_plural_is_made_by_hand():
    made = [
        f"{path.relative_to(ROOT)}: {line.strip()}"
        for room in ("binder", "ui")
        for path in (ROOT / room).rglob("*.py")
        for line in path.read_text(encoding="utf-8").splitlines()
        if BY_HAND.search(line)
    ]
    assert not made
