"""Whatever a deck calls a card is read as that card, or asked about; never as another."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from binder.cards.facts import SUITS
from binder.cards.shorthand import read
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles
from binder.cards.vocabulary import vocabulary

ONE_NAMED = DeckTitles.from_dict(
    {"own": {"wands-02": "Dominion"}, "extras": {"extra-01": "The Ferry", "extra-02": "St. Elmo"}}
)
DECKS = [*TRADITIONS, replace(ONE_NAMED, name="with cards of its own")]
by_name = pytest.mark.parametrize("deck", DECKS, ids=lambda deck: deck.name)

COURT_CODES = {11: "pg", 12: "kn", 13: "q", 14: "k"}


def keys_of(text: str, deck: DeckTitles) -> list[str | None]:
    return [part.card.key if part.card else None for part in read(text, deck).parts]


def titles_of(deck: DeckTitles, key: str) -> Iterator[str]:
    """Every way to write the whole title; built here, not by the program."""
    title = deck.title(key)
    yield from (title, title.upper(), title.lower(), f"  {title}  ")
    for article in ("The ", "Le ", "La ", "L'", "Il ", "Gli "):
        if title.startswith(article):
            yield title.removeprefix(article)
    card = deck.card(key)
    if card.arcana == "minor" and card.number < 11:
        yield f"{card.number} {deck.ending(card.suit)}"


def abbreviations_of(deck: DeckTitles, key: str) -> Iterator[str]:
    card = deck.card(key)
    if card.arcana == "major":
        yield from (str(deck.number(key)), deck.roman(key), deck.roman(key).lower())
    if card.arcana != "minor":
        return
    codes = COURT_CODES if deck.ranks[13] != "Knight" else {**COURT_CODES, 12: "prince", 14: "kn"}
    ranks = [deck.ranks[card.number - 1], codes.get(card.number, str(card.number))]
    if card.number == 1:
        ranks += ["a", "A", "ace"]
    suit = deck.suit(card.suit)
    for rank in ranks:
        for short in (suit, suit[:2], suit[0], card.suit, card.suit[:2]):
            yield from (f"{rank} {short}", f"{rank} of {short}", f"{rank}{short}")


@by_name
def test_every_title_reads_back_to_its_card(deck: DeckTitles) -> None:
    for key in deck.keys:
        for text in titles_of(deck, key):
            assert keys_of(text, deck) == [key], text


@by_name
def test_every_name_and_code_the_deck_knows_reads_back(deck: DeckTitles) -> None:
    words = vocabulary(deck)
    known = {**words.numerals, **deck.names()}
    for text, key in known.items():
        assert keys_of(text, deck) == [key], text


@by_name
def test_every_abbreviation_reads_back_or_is_asked_about(deck: DeckTitles) -> None:
    for key in deck.keys:
        for text in abbreviations_of(deck, key):
            (part,) = read(text, deck).parts
            offered = {choice.card.key for choice in part.choices}
            assert (part.card and part.card.key == key) or key in offered, (text, part)


@by_name
def test_no_two_cards_share_a_shorthand(deck: DeckTitles) -> None:
    meant: dict[str, set[str]] = {}
    for key in deck.keys:
        for text in {*titles_of(deck, key), *abbreviations_of(deck, key)}:
            meant.setdefault(text.strip().casefold(), set()).add(key)
    shared = {text: keys for text, keys in meant.items() if len(keys) > 1}
    for text, keys in shared.items():
        (part,) = read(text, deck).parts
        assert part.card is None or part.card.title.casefold() == text, (text, keys)


# Names seen in English, French, Italian and Spanish packs; common practice, from memory.
ELSEWHERE = {
    "major-00": "The Foolish Man, The Madman, The Excuse, Le Mat, Il Matto",
    "major-01": "The Juggler, The Magus, The Mountebank, Le Bateleur, Il Bagatto",
    "major-02": "The Popess, The Female Pope, The Papess, The Priestess, Juno, La Papesse",
    "major-03": "L'Impératrice, L'Imperatrice",
    "major-04": "L'Empereur, L'Imperatore",
    "major-05": "The Pope, Jupiter, Le Pape, Il Papa",
    "major-06": "The Lover, L'Amoureux, Gli Amanti",
    "major-07": "Le Chariot, Il Carro",
    "major-08": "Fortitude, Force, Lust, La Force, La Forza",
    "major-09": "The Old Man, Time, L'Hermite, L'Eremita",
    "major-10": "The Wheel of Fortune, The Wheel of Fate, Fortune, La Roue de Fortune",
    "major-11": "Themis, Adjustment, La Justice, La Giustizia",
    "major-12": "The Traitor, Le Pendu, L'Appeso",
    "major-13": "La Mort, La Morte",
    "major-14": "Art, Tempérance, La Temperanza",
    "major-15": "Le Diable, Il Diavolo",
    "major-16": "The Lightning-struck Tower, The Blasted Tower, The House of God, La Torre",
    "major-17": "The Stars, L'Étoile, Le Stelle",
    "major-18": "La Lune, La Luna",
    "major-19": "Le Soleil, Il Sole",
    "major-20": "The Last Judgement, The Last Judgment, The Judgment, The Angel, The Aeon",
    "major-21": "The Universe, Le Monde, Il Mondo",
}
SUITS_ELSEWHERE = {
    "wands": "Batons, Staves, Rods, Sceptres, Clubs, Staffs, Bâtons, Bastoni, Bastos",
    "cups": "Chalices, Goblets, Hearts, Coupes, Coppe, Copas",
    "swords": "Blades, Spades, Daggers, Épées, Spade, Espadas",
    "pentacles": "Coins, Disks, Discs, Deniers, Money, Stars, Diamonds, Denari, Oros",
}
COURTS_ELSEWHERE = {
    11: "Page, Knave, Valet, Princess, Jack, Fante, Sota",
    12: "Knight, Cavalier, Horseman, Cavallo, Caballo",
    13: "Queen, Dame, Reine, Regina, Reina",
    14: "King, Emperor, Lord, Roi, Re, Rey",
}


@pytest.mark.parametrize(("key", "names"), ELSEWHERE.items())
def test_trumps_are_known_by_the_names_of_other_decks(key: str, names: str) -> None:
    for name in names.split(", "):
        assert keys_of(name, STANDARD) == [key], name


@pytest.mark.parametrize("suit", SUITS)
def test_suits_and_courts_are_known_by_the_names_of_other_decks(suit: str) -> None:
    for word in SUITS_ELSEWHERE[suit].split(", "):
        assert keys_of(f"7 of {word}, 8 {word}, 9{word}", STANDARD) == [
            f"{suit}-07",
            f"{suit}-08",
            f"{suit}-09",
        ]
        for rank, courts in COURTS_ELSEWHERE.items():
            for court in courts.split(", "):
                assert keys_of(f"{court} of {word}", STANDARD) == [f"{suit}-{rank}"]


def test_a_prince_is_asked_about_where_the_schools_differ() -> None:
    (part,) = read("prince of cups").parts
    assert part.card is None
    assert [choice.card.key for choice in part.choices] == ["cups-12", "cups-14"]


def test_a_code_that_begins_two_names_of_a_deck_is_asked_about() -> None:
    older = next(deck for deck in TRADITIONS if deck.title("cups-11") == "Knave of Cups")
    (part,) = read("kn of cups", older).parts
    assert part.card is None
    assert "Knave of Cups or Knight of Cups" in part.problem
    (part,) = read("kn of cups", STANDARD).parts
    assert part.card is not None
    assert part.card.key == "cups-12"


def test_a_deck_without_kings_gives_its_knight_the_kings_place() -> None:
    deck = next(deck for deck in TRADITIONS if deck.ranks[13] == "Knight")
    assert keys_of("knight of cups, prince of cups, princess of cups", deck) == [
        "cups-14",
        "cups-12",
        "cups-11",
    ]


def test_two_suits_with_one_letter_are_asked_about() -> None:
    deck = next(deck for deck in TRADITIONS if deck.suits == ("Batons", "Cups", "Swords", "Coins"))
    (part,) = read("3c", deck).parts
    assert part.problem == "“3c” may be Three of Cups or Three of Coins; write a little more."
    assert keys_of("4 cu, 4 co, 5p", deck) == ["cups-04", "pentacles-04", "pentacles-05"]


def test_high_priest_is_not_taken_for_the_priestess() -> None:
    (part,) = read("high priest").parts
    assert part.card is None
    assert {choice.card.key for choice in part.choices} == {"major-02", "major-05"}
