"""Cards that clarify others, `3w + qc`: where they lie, what is said of them, what is offered."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import CARDS, Card
from binder.cards.shorthand import fit, read, shortest, suggest
from binder.cards.titles import TRADITIONS, DeckTitles

Pile = list[tuple[str, bool]]


def piles(text: str) -> dict[int, list[str]]:
    """Place -> keys of its card and of those beside it, r for reversed; problems must be none."""
    line = read(text)
    assert line.problems == ()
    out: dict[int, list[str]] = {}
    for part in line.parts:
        assert part.card is not None
        assert part.place is not None
        assert part.beside == (part.place in out)
        said = f"{part.card.key}{' r' if part.reversed else ''}"
        out.setdefault(part.place, []).append(said)
    return out


@pytest.mark.parametrize(
    "text",
    [
        "3w + qc r, hermit",
        "3w, + qc r, hermit",
        "3w+qc r hermit",
        "3w, hermit, 1: + qc r",
        "1: 3w + queen of cups reversed, 2: the hermit",
        "3w hermit place 1 = +qcr",
        "2: hermit, 3w + qc r",
    ],
)
def test_ways_to_lay_one_card_beside_another(text: str) -> None:
    assert piles(text) == {1: ["wands-03", "cups-13 r"], 2: ["major-09"]}


def test_several_beside_one_and_one_beside_each() -> None:
    assert piles("3w + qc + 2s, hermit + star") == {
        1: ["wands-03", "cups-13", "swords-02"],
        2: ["major-09", "major-17"],
    }
    assert piles("3w, hermit, 1: + qc, + star") == {
        1: ["wands-03", "cups-13", "major-17"],
        2: ["major-09"],
    }


@pytest.mark.parametrize(
    ("text", "typed", "sentence"),
    [
        ("+ qc", "+ qc", "A card after “+” lies beside the one before it"),
        ("+", "+", "A card after “+” lies beside the one before it"),
        ("3w, 3w, + qc", "+ qc", "A card after “+” lies beside the one before it"),
        ("3w, 4: + qc", "4: + qc", "No card lies in place 4 yet; write that one first"),
        ("3w +, hermit", "+", "“+” has no card after it; write the one that lies beside"),
        ("3w ++ qc", "+", "“+” has no card after it; write the one that lies beside"),
        ("3w + 3w", "+ 3w", "Three of Wands is in this line twice"),
        ("3w, hermit + 3w r", "+ 3w r", "Three of Wands is in this line twice"),
        ("3w + hermitz", "+ hermitz", "“hermitz” is not understood."),
        ("3w + queen", "+ queen", "“queen” needs a suit after it"),
    ],
)
def test_what_is_not_understood_is_marked(text: str, typed: str, sentence: str) -> None:
    wrong = [part for part in read(text).parts if part.problem][-1]
    assert wrong.text == text[wrong.start : wrong.end] == typed
    assert wrong.problem.startswith(sentence)


def test_what_is_not_understood_keeps_its_place_beside() -> None:
    part = read("3w, hermit, 1: + quen of cups").parts[-1]
    assert (part.place, part.beside, part.card) == (1, True, None)
    assert part.choices[0].text == "1: + qc"


def test_cards_beside_others_are_not_counted_against_the_spread() -> None:
    assert fit(read("3w + qc, hermit, star + 2s + 5p"), 3, "Three cards") == ""
    assert (
        fit(read("3w + qc, hermit"), 3, "Horseshoe")
        == "A horseshoe takes three cards; this line has two."
    )


@pytest.mark.parametrize(
    ("text", "texts"),
    [
        ("3w + he", ["+ hermit"]),
        ("3w + st r", ["+ strength r", "+ star r"]),
        ("3w, star, 1: + q", ["1: + qw", "1: + qc"]),
        ("3w + ", []),
        ("3w + qc", []),
    ],
)
def test_what_a_card_beside_may_become(text: str, texts: list[str]) -> None:
    found = [each.text for each in suggest(text, len(text))]
    assert found[: len(texts)] == texts
    assert bool(found) == bool(texts)


cards = st.tuples(st.sampled_from(CARDS), st.booleans())
spreads_of_piles = st.lists(cards, min_size=1, max_size=20, unique_by=lambda it: it[0].key).flatmap(
    lambda all_: st.lists(st.booleans(), min_size=len(all_), max_size=len(all_)).map(
        lambda starts: _piled(all_, starts)
    )
)


def _piled(laid: list[tuple[Card, bool]], starts: list[bool]) -> list[list[tuple[Card, bool]]]:
    """The cards in piles; each True begins the next one."""
    out: list[list[tuple[Card, bool]]] = []
    for one, start in zip(laid, starts, strict=True):
        if start or not out:
            out.append([])
        out[-1].append(one)
    return out


@given(
    spreads_of_piles,
    st.sampled_from(TRADITIONS),
    st.sampled_from([" + ", "+", ", + ", "\n+"]),
    st.randoms(use_true_random=False),
)
def test_any_piles_read_back(
    laid: list[list[tuple[Card, bool]]], deck: DeckTitles, plus: str, chance: object
) -> None:
    told = [plus.join(shortest(card, turned, deck) for card, turned in pile) for pile in laid]
    line = read(", ".join(told), deck)
    wanted = [(n, c.key, r) for n, pile in enumerate(laid, 1) for c, r in pile]
    assert [(p.place, p.card and p.card.key, p.reversed) for p in line.parts] == wanted
    later = [
        f"{n}: + {shortest(c, r, deck)}" for n, pile in enumerate(laid, 1) for c, r in pile[1:]
    ]
    chance.shuffle(later)  # type: ignore[attr-defined]
    firsts = [shortest(*pile[0], deck) for pile in laid]
    again = read(", ".join([*firsts, *later]), deck)
    assert {(p.place, p.card and p.card.key, p.reversed) for p in again.parts} == set(wanted)
    assert line.problems == again.problems == ()
