"""What a part that is no card may have meant, and the shorthand to write in its stead."""

from collections.abc import Iterable, Iterator
from functools import lru_cache

from binder.cards import facts
from binder.cards.line import before_card
from binder.cards.pieces import Meaning, Piece
from binder.cards.shortest import shorthand
from binder.cards.titles import DeckTitles
from binder.cards.turns import GLUED, is_mark, unmarked
from binder.cards.vocabulary import Vocabulary, vocabulary
from binder.cards.words import bare, fold

MOST = 4
"""Choices offered at a time."""
MOST_COMPLETED = 6
MAY_BE = "may be meant"
"""Why a card is offered that what is written can mean as it stands."""
_NEAR = 0.6
_SHOWN = 40
Guess = tuple[str, bool, str]
"""Key, whether reversed, and why it is offered."""


def problem(typed: str, piece: Piece, titles: DeckTitles) -> str:
    """The sentence for a piece that is not exactly one card; `typed` is as the student wrote it."""
    quoted = f"“{typed if len(typed) <= _SHOWN else typed[:_SHOWN] + '…'}”"
    if piece.doubt:
        return f"{quoted} {_doubt(piece, titles)}"
    if piece.meanings:
        return f"{quoted} may be {_either(piece, titles)}; write a little more."
    text, words = unmarked(piece.text)[0], vocabulary(titles)
    if text in words.all_ranks:
        return f"{quoted} needs a suit after it, as in “{_example(text, words)}”."
    if text in words.all_suits:
        return f"{quoted} is a suit; write a number or a court card before it."
    if is_mark(piece.text):
        return f"{quoted} turns the card before it, and there is none to turn."
    if text.isdigit() and text.isascii():
        return f"{quoted} is no card; the Majors run from 0 to 21."
    return f"{quoted} is not understood."


def _doubt(piece: Piece, titles: DeckTitles) -> str:
    """Why words that hold cards are not read."""
    words = vocabulary(titles)
    queen = shorthand("cups-13", words)
    if piece.doubt == "own" and piece.within:
        key, number = piece.within[0], titles.number(piece.within[0])
        short = shorthand(key, words)
        return (
            f"may be {titles.title(key)} for place {number}, or that card with its own number; "
            f"write “{before_card(number)}{short}” or “{short}”."
        )
    return {
        "divided": "can be read in several ways; put commas between the cards.",
        "turn": "does not say which card is reversed; put commas between the cards, r after each.",
        "number": "has a number beside a card; put a comma between two cards, a suit after a "
        f"number, or write a place as in “4: {queen}”.",
    }.get(piece.doubt, "is not understood.")


def _inside(piece: Piece) -> tuple[Guess, ...]:
    """The one card in words that are not read as a whole; after a lone letter, reversed too."""
    if piece.within is None:
        return ()
    key, turned = piece.within
    other = not turned and _ends_in_letter(piece.text)
    found = [(key, turned, "the card in it")]
    return (*found, (key, True, "the card in it")) if other else tuple(found)


def _ends_in_letter(text: str) -> bool:
    return text[-1:].isalpha() and text[-2:-1] == " "


def guesses(piece: Piece, titles: DeckTitles) -> tuple[Guess, ...]:
    """The likeliest cards for a piece that is not exactly one, likeliest first."""
    if piece.doubt:
        return _inside(piece)
    if piece.meanings:
        return tuple((key, turned, MAY_BE) for key, turned in ordered(piece.meanings))
    text, mark = unmarked(piece.text)
    words, turned = vocabulary(titles), bool(mark)
    if text in words.all_suits and text not in words.all_ranks:
        return ()
    suited = [(key, turned, "add its suit") for key in unsuited(text, words)]
    suited += [(key, True, "reversed") for key in _glued_mark(text, words)]
    if len(suited) < 2:
        known = {key for key, _, _ in suited}
        nearly = (key for key in near(text, titles) if key not in known)
        suited += [(key, turned, "spelt nearly so") for key in nearly]
    return tuple(suited[:MOST])


def completions(piece: Piece, titles: DeckTitles) -> list[Guess]:
    """Cards a piece may become as it is typed: what it means, then what begins with it."""
    text, mark = unmarked(piece.text)
    turned = bool(mark)
    found = {key: (key, way, "") for key, way in ordered(piece.meanings)}
    for key in unsuited(text, vocabulary(titles)):
        found.setdefault(key, (key, turned, "add its suit"))
    for key in _begun(text, titles):
        found.setdefault(key, (key, turned, ""))
    if not found:
        return list(guesses(piece, titles))
    return list(found.values())[:MOST_COMPLETED]


def _begun(text: str, titles: DeckTitles) -> Iterator[str]:
    """Cards whose title, numeral, then any word of the title begins with the text."""
    begun, name = [], bare(text)
    for title, key in _titles(titles):
        if title.startswith(name) and (len(name) > 1 or key.startswith("major")):
            yield key
        elif f" {name}" in title:
            begun.append(key)
    for numeral, key in vocabulary(titles).numerals.items():
        if numeral.startswith(text) and text != "0":
            yield key
    yield from begun


@lru_cache(maxsize=64)
def _titles(titles: DeckTitles) -> tuple[tuple[str, str], ...]:
    return tuple((bare(fold(titles.title(key))), key) for key in titles.keys)


def ordered(meant: Iterable[Meaning]) -> list[Meaning]:
    """Meanings in the order of the deck."""
    place = {card.key: at for at, card in enumerate(facts.CARDS)}
    return sorted(meant, key=lambda each: (place.get(each[0], len(place)), each))


def unsuited(text: str, words: Vocabulary) -> Iterator[str]:
    """The cards of a rank that lacks its suit, or has one no deck knows: 'queen', '3x', '11w'."""
    digits = text[: len(text) - len(text.lstrip("0123456789"))]
    rest = text[len(digits) :].strip()
    if digits and rest and len(rest) <= 2:
        ranks = frozenset((int(digits),)) if len(digits) <= 2 else frozenset()
        suits = words.all_suits.get(rest, facts.SUITS)
    else:
        ranks, suits = words.all_ranks.get(text, frozenset()), facts.SUITS
    for rank in sorted(ranks):
        if 1 <= rank <= 14:
            yield from (f"{suit}-{rank:02}" for suit in facts.SUITS if suit in suits)


def _glued_mark(text: str, words: Vocabulary) -> Iterator[str]:
    """The card of a title with a mark of reversal after it and no space: 'hermitr'."""
    ends = (text.removesuffix(mark) for mark in GLUED)
    known = (words.find(end) for end in ends if 2 < len(end) < len(text))
    yield from sorted(next(filter(None, known), ()))


@lru_cache(maxsize=512)
def near(text: str, titles: DeckTitles) -> tuple[str, ...]:
    """Keys of cards spelt nearly so: those of that suit and number first, then the nearest."""
    if not 1 < len(text) <= _SHOWN:
        return ()
    words = vocabulary(titles)
    suited = tuple(_of_suit_and_number(text, words))
    if len(text) == 2:
        return suited
    pool = _pool(titles)
    keys = tuple(dict.fromkeys(pool[name] for name in _close(bare(text), pool, 4 * MOST)))
    ranks = words.all_ranks.get(text.partition(" ")[0], ())
    keys = tuple(key for key in keys if int(key[-2:]) in ranks) or keys
    return tuple(dict.fromkeys(suited + keys))


def _close(text: str, pool: Iterable[str], most: int) -> list[str]:
    from difflib import get_close_matches  # only a slip needs it, so the start does not wait

    return get_close_matches(text, pool, n=most, cutoff=_NEAR)


def _of_suit_and_number(text: str, words: Vocabulary) -> Iterator[str]:
    """Cards whose rank and suit are both there, one of them or both with a slip: '15w', 'xc'."""
    for rank, suit in _rank_and_suit(text, words):
        ranks, suits = _ranks_like(rank, words), _suits_like(suit, words)
        yield from (f"{each}-{number:02}" for each in suits for number in ranks)


def _rank_and_suit(text: str, words: Vocabulary) -> Iterator[tuple[str, str]]:
    rank, _, suit = text.partition(" ")
    if suit:
        yield rank, suit.removeprefix("of ").removeprefix("the ")
        return
    for at in range(1, len(text)):
        rank, suit = text[:at], text[at:]
        if suit in words.all_suits and (rank.isdigit() or rank in words.all_ranks):
            yield rank, suit


def _ranks_like(text: str, words: Vocabulary) -> list[int]:
    """The ranks a word is, or is nearly; of a number that is none, those with its figures."""
    exact = words.all_ranks.get(text)
    if exact:
        return sorted(exact)
    if text.isdigit():
        court = [int(text)] if len(text) == 2 and 11 <= int(text) <= 14 else []
        figures = sorted({int(figure) for figure in text[:3]} - {0}, reverse=True)
        return [*court, *figures, *([10] if "0" in text else [])]
    near = [words.all_ranks[name] for name in _close(text, words.all_ranks, 2)]
    return list(dict.fromkeys(rank for ranks in near for rank in sorted(ranks)))


def _suits_like(text: str, words: Vocabulary) -> list[str]:
    """The suits a word is, or is nearly, likeliest first."""
    exact = words.all_suits.get(text)
    if exact:
        return [suit for suit in facts.SUITS if suit in exact]
    own = {fold(words.deck.suit(suit)): suit for suit in facts.SUITS}
    return [own[name] for name in _close(text, own, 2)]


@lru_cache(maxsize=64)
def _pool(titles: DeckTitles) -> dict[str, str]:
    """Spellings a slip is compared with: bare folded titles, '3 of wands', numerals."""
    names = {bare(fold(name)): key for name, key in titles.names().items()}
    numerals = vocabulary(titles).numerals.items()
    return {text: key for text, key in numerals if len(text) > 2} | names


def _either(piece: Piece, titles: DeckTitles) -> str:
    named = [spoken(key, turned, titles) for key, turned in ordered(piece.meanings)]
    if len(named) > 3:
        named = [*named[:3], "another"]
    return f"{', '.join(named[:-1])} or {named[-1]}"


def spoken(key: str, turned: bool, titles: DeckTitles) -> str:
    """A card as it is said: 'The Hermit reversed'."""
    return titles.title(key) + (" reversed" if turned else "")


def _example(text: str, words: Vocabulary) -> str:
    rank = min(words.all_ranks[text])
    return shorthand(f"cups-{rank:02}", words)
