"""What must hold of shorthand for any cards, any deck and any text."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.cards.shorthand import fit, read, shortest, suggest
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles

decks = st.sampled_from(TRADITIONS)


@given(st.sampled_from(CARDS), st.booleans(), decks)
def test_the_shortest_reads_back(card: object, turned: bool, deck: DeckTitles) -> None:
    text = shortest(card, turned, deck)
    (part,) = read(text, deck).parts
    assert (part.card, part.reversed, part.problem) == (card, turned, "")


BETWEEN = [", ", ";", "\n", " / ", " & ", " and ", " → ", "->", " - ", " – "]


@given(st.lists(st.tuples(st.sampled_from(CARDS), st.booleans()), unique_by=lambda it: it[0]),
       decks, st.sampled_from(BETWEEN))  # fmt: skip
def test_a_whole_line_reads_back(
    cards: list[tuple[object, bool]], deck: DeckTitles, between: str
) -> None:
    line = read(between.join(shortest(card, turned, deck) for card, turned in cards), deck)
    assert [(part.card, part.reversed) for part in line.parts] == cards
    assert list(line.laid) == list(range(1, len(cards) + 1))


@given(st.lists(st.tuples(st.sampled_from(CARDS[22:]), st.booleans()), min_size=1, max_size=12,
                unique_by=lambda it: it[0]),
       decks, st.sampled_from([". ", ") ", ")", ": ", ":"]), st.sampled_from([", ", "\n", " "]),
       st.integers(1, 9))  # fmt: skip
def test_a_numbered_list_reads_back(
    cards: list[tuple[object, bool]], deck: DeckTitles, point: str, between: str, first: int
) -> None:
    told = [shortest(card, turned, deck) for card, turned in cards]
    text = between.join(f"{n}{point}{words}" for n, words in enumerate(told, first))
    wanted = [(n, card, turned) for n, (card, turned) in enumerate(cards, first)]
    line = read(text, deck)
    assert [(part.place, part.card, part.reversed) for part in line.parts] == wanted
    assert line.problems == ()


odd_titles = st.text(st.sampled_from("3wrIVx: ,'-?éof1k/"), min_size=1, max_size=6)


@given(st.lists(odd_titles, min_size=22, max_size=22), odd_titles)
def test_the_shortest_reads_back_whatever_the_titles(titles: list[str], added: str) -> None:
    deck = replace(STANDARD, trumps=tuple(titles), extras=(("extra-01", added),))
    for key in deck.keys:
        for turned in (False, True):
            text = shortest(deck.card(key), turned, deck)
            parts = read(text, deck).parts
            assert [(part.card and part.card.key, part.reversed) for part in parts] == [
                (key, turned)
            ]


LETTERS = st.sampled_from("abcdefghijklmnopqrstuvwxyz")


@given(st.sampled_from([STANDARD.title(key).lower() for key in STANDARD.keys]), st.data())
def test_one_wrong_letter_makes_no_other_card(title: str, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(title) - 1))
    head, tail, letter = title[:at], title[at:], data.draw(LETTERS)
    swapped = tail[1:2] + tail[:1] + tail[2:]
    edited = data.draw(st.sampled_from([tail[1:], swapped, letter + tail, letter + tail[1:]]))
    parts = read(head + edited).parts
    told = [STANDARD.title(part.card.key).lower() for part in parts if part.card]
    is_nine = (head + edited).startswith("ix ")  # nine, rightly written
    assert any(part.problem for part in parts) or told == [title] or is_nine


SCRAPS = """
3w hermit r qc 4: 4 xvii of the cups wands k kn pg ace 10 sw , ; / ( ) “ ↓ ' rev é ß 0 ١ ² : = + zz
emp reversed 3 page high priest last 99 knight's queen of swords 7p up
"""
PIECES = st.sampled_from([*SCRAPS.split(), "\n"])
LINES = st.lists(PIECES).map(" ".join) | st.lists(PIECES).map("".join) | st.text()


@given(LINES, decks)
def test_any_text_is_read_without_a_fall(text: str, deck: DeckTitles) -> None:
    line = read(text, deck)
    for part in line.parts:
        assert text[part.start : part.end] == part.text
        assert part.text
        assert (part.card is None) <= bool(part.problem)
        assert part.problem == "" or part.problem.endswith(".")
    starts = [part.start for part in line.parts]
    assert starts == sorted(starts)
    assert isinstance(fit(line, 5, text[:9]), str)


@given(LINES, st.data(), decks)
def test_any_text_can_be_completed(text: str, data: st.DataObject, deck: DeckTitles) -> None:
    cursor = data.draw(st.integers(0, len(text)))
    for offered in suggest(text, cursor, deck):
        assert offered.start <= cursor <= offered.end <= len(text)
        (part,) = read(offered.text, deck).parts
        assert (part.card, part.reversed) == (offered.card, offered.reversed)


@given(LINES, decks)
def test_every_choice_mends_its_part(text: str, deck: DeckTitles) -> None:
    for part in read(text, deck).parts:
        for choice in part.choices:
            (mended,) = read(choice.text, deck).parts
            assert (mended.card, mended.reversed) == (choice.card, choice.reversed)
