"""Decks of the owner's making: every title and code reads back, however odd, and none is shared."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from binder.cards.shorthand import read, shortest
from binder.cards.titles import STANDARD, DeckTitles
from binder.cards.vocabulary import vocabulary
from binder.cards.words import MARKS, alike
from binder.errors import CanMend
from tests.profiles import fewer

SCRAPS = """
the of Star star Sun 3w r rev up XVII 17 Queen Cups qc, and, / 4: + = é Épée l'Étoile d' - (II)
three Wands knight's St. ü ß
"""
WORDS = st.sampled_from(SCRAPS.split())
titles = st.lists(WORDS, min_size=1, max_size=4).map(" ".join)
glued = st.text(st.sampled_from("aeRs3w17 ,;/:+=-'.é"), min_size=1, max_size=9)


@st.composite
def decks(draw: st.DrawFn) -> DeckTitles:
    """A deck as its owner may have titled it; where two cards are called alike it is refused."""
    said: dict[str, object] = {"name": "Mine"}
    trumps = list(STANDARD.trumps)
    for at in draw(st.lists(st.integers(0, 21), max_size=8, unique=True)):
        trumps[at] = draw(titles | glued)
    said["trumps"] = trumps
    if draw(st.booleans()):
        said["suits"] = draw(st.lists(titles | glued, min_size=4, max_size=4))
    keys = st.sampled_from(["wands-02", "cups-01", "swords-12", "pentacles-14"])
    said["own"] = draw(st.dictionaries(keys, titles | glued, max_size=3))
    extras = draw(st.lists(titles | glued, max_size=3))
    said["extras"] = {f"extra-{n:02}": title for n, title in enumerate(extras, 1)}
    said["eleven_is"] = draw(st.sampled_from(["justice", "strength"]))
    try:
        deck = DeckTitles.from_dict(said)
    except CanMend:
        assume(False)
    said_of = [*(deck.title(key) for key in deck.keys), *deck.suits]
    assume(all(any(c.isalnum() for c in words) for words in said_of))
    return deck


def read_as(text: str, deck: DeckTitles) -> list[tuple[str | None, bool]]:
    return [(p.card and p.card.key, p.reversed) for p in read(text, deck).parts]


@fewer(2)
@given(decks())
def test_whatever_a_deck_calls_its_cards_reads_back(deck: DeckTitles) -> None:
    """All of it of one deck at a time, since its words are dear to make."""
    titles_read_back(deck)
    shorthand_reads_back(deck)
    codes_read_back(deck)


def titles_read_back(deck: DeckTitles) -> None:
    """Every title is its own card, however it is cased."""
    for key in deck.keys:
        title = deck.title(key)
        for text in (title, title.upper(), title.lower(), f" {title} "):
            if text.strip().lower() == title.strip().lower():  # ß has no capital of its own
                assert read_as(text, deck) == [(key, False)], text


def shorthand_reads_back(deck: DeckTitles) -> None:
    """The shortest of every card is that card, either way up, and no two cards share one."""
    short = {key: shortest(deck.card(key), False, deck) for key in deck.keys}
    assert len(set(short.values())) == len(short)
    for key, text in short.items():
        assert read_as(text, deck) == [(key, False)]
        assert read_as(shortest(deck.card(key), True, deck), deck) == [(key, True)]


def codes_read_back(deck: DeckTitles) -> None:
    """Every code and numeral is its own card, or is asked about."""
    known = {**vocabulary(deck).numerals, **deck.names()}
    for text, key in known.items():
        if MARKS.search(text):  # titles as they are written are tried above
            continue
        found, key = read_as(text, deck), known.get(alike(text), key)
        assert found == [(key, False)] or None in [one for one, _ in found], text


@pytest.mark.parametrize("title", ["Sun, Moon", "Death / Rebirth", "4: The Wall", "Bread + Salt"])
def test_a_title_with_a_mark_in_it_is_read_whole(title: str) -> None:
    deck = DeckTitles.from_dict({"trumps": [title, *STANDARD.trumps[1:]]})
    line = read(f"3w, {title.lower()} r, 4: qc + hermit", deck)
    assert [(p.place, p.card and p.card.key, p.reversed) for p in line.parts] == [
        (1, "wands-03", False),
        (2, "major-00", True),
        (4, "cups-13", False),
        (4, "major-09", False),
    ]
    assert read_as("sun, moon", STANDARD) == [("major-19", False), ("major-18", False)]


def test_a_whole_title_outdoes_what_else_it_could_mean() -> None:
    deck = DeckTitles.from_dict(
        {
            "trumps": [
                "3w",
                "Sun",
                "The Sun Card",
                *STANDARD.trumps[3:19],
                "The Sun",
                "Star r",
                "XVII",
            ]
        }
    )
    assert read_as("3w, sun, the sun, star r, xvii", deck) == [
        ("major-00", False),
        ("major-01", False),
        ("major-19", False),
        ("major-20", False),
        ("major-21", False),
    ]
    assert read_as(f"{shortest(deck.card('major-17'), True, deck)}", deck) == [("major-17", True)]
