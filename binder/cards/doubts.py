"""What could be read, but may mean something else as well, and is therefore asked about.

First within the words of one entry, then from what the entries beside it say.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import NamedTuple

from binder.cards import facts, guess
from binder.cards.entries import Stretch
from binder.cards.line import MOST_PLACES
from binder.cards.pieces import Piece, Word
from binder.cards.titles import DeckTitles
from binder.cards.turns import led, like_mark, trailed, turns_all, unmarked
from binder.cards.vocabulary import Vocabulary, vocabulary

_LONGEST_OF_ALL = 8
_MOST_SLIPS = 12
"""Unknown words among cards that are looked up; more are a wrong text, not slips."""


class Entry(NamedTuple):
    """A piece with the stretch it stands in; what begins the stretch is for its first piece."""

    stretch: Stretch
    piece: Piece
    first: bool


# Within one entry


def settled(chain: list[Piece], titles: DeckTitles, *, alone: bool, doubt: str = "") -> list[Piece]:
    """The pieces of one entry, those put together that cannot be told apart.

    `alone` is whether the whole line is this entry, so that plain spaces may part its cards.
    """
    if doubt == "asked" and len(chain) == 1:
        return [_open(chain[0], vocabulary(titles))]
    if doubt:
        return [_whole(chain, "turn" if doubt == "turn" else "mixed")]
    words = vocabulary(titles)
    chain = _with_own_numbers(chain, words)
    if len(chain) < 2:
        return chain
    if _nearly_one(chain, words):
        return [_whole(chain, "mixed")]
    chain = _with_lone_letters(chain)
    between = any(trailed(piece.text) for piece in chain[:-1])
    if between and not led(chain[0].text):
        return [_whole(chain, "turn")]
    numbers = [at for at, piece in enumerate(chain) if is_number(piece, words)]
    if numbers:
        listed = numbers == [len(chain) - 1] and len(chain) > 2 and _all_read(chain[:-1])
        if listed:
            return [*chain[:-1], _numbered(chain[-1], words)]
        return [_numbered_whole(chain, words)]
    if _two_suits(chain, words) or _mixed(chain, titles, alone):
        return [_whole(chain, "mixed")]
    return chain


def doubted_of(chain: list[Piece], text: str, end: int, titles: DeckTitles) -> list[Piece]:
    """The pieces of an entry up to `end`, those open that a question mark follows."""
    ends = [*(piece.words[0].start for piece in chain[1:]), end]
    unsure = [
        "?" in text[piece.words[0].start : last] for piece, last in zip(chain, ends, strict=True)
    ]
    if not any(unsure):
        return [_whole(chain, "mixed")]
    words = vocabulary(titles)
    return [
        _open(piece, words) if open_ else piece for piece, open_ in zip(chain, unsure, strict=True)
    ]


def _open(piece: Piece, words: Vocabulary) -> Piece:
    """A piece with all it could mean if others stood beside it."""
    return _suit_left_out(piece, words) if _shape(piece, words) else _both_ways(piece)


def is_number(piece: Piece, words: Vocabulary) -> bool:
    """Whether a piece is nothing but a trump's number or numeral, turned or not."""
    text, _ = unmarked(piece.text)
    return piece.text not in words.names and text not in words.names and text in words.numerals


def _with_own_numbers(chain: list[Piece], words: Vocabulary) -> list[Piece]:
    """The pieces, each trump put together with its own number: 'hermit ix', 'xvi tower r'.

    An x after a card is left, as it may be a slip for rx; so is a figure before one that may be
    its place.
    """
    out: list[Piece] = []
    for piece in chain:
        before = out[-1] if out else None
        if before and _same_trump(before, piece) and _tells(before, piece, words):
            turned = before.meaning, piece.meaning
            key, up = piece.meaning or ("", False)
            either = any(each and each[1] for each in turned)
            out[-1] = Piece(before.words + piece.words, frozenset({(key, up or either)}))
        else:
            out.append(piece)
    return out


def _nearly_one(chain: Sequence[Piece], words: Vocabulary) -> bool:
    """Whether the pieces together are one title with a slip in it: 'whe star' for 'the star'."""
    text = " ".join(piece.text for piece in chain)
    names = [name for name in words.names if abs(len(name) - len(text)) < 2 and " " in name]
    if not names:
        return False
    from rapidfuzz import process  # only here, so the start does not wait
    from rapidfuzz.distance import OSA

    return process.extractOne(text, names, scorer=OSA.distance, score_cutoff=1) is not None


def _with_lone_letters(chain: list[Piece]) -> list[Piece]:
    """The pieces, each card as one with a lone letter after it, that may be a slip for r."""
    out: list[Piece] = []
    for piece in chain:
        letter = len(piece.text) == 1 and piece.text.isalpha() and not piece.meanings
        if letter and out and out[-1].meaning:
            out[-1] = _whole([out[-1], piece], "mixed")
        else:
            out.append(piece)
    return out


def _same_trump(before: Piece, after: Piece) -> bool:
    return bool(before.meaning and after.meaning and before.meaning[0] == after.meaning[0])


def _tells(before: Piece, after: Piece, words: Vocabulary) -> bool:
    if is_number(after, words):
        return not is_number(before, words) and unmarked(after.text)[0] != "x"
    if not is_number(before, words):
        return False
    figure = before.text.isdigit() and int(before.text)
    return not before.text[0].isdigit() or not 0 < figure <= MOST_PLACES


def _all_read(chain: Sequence[Piece]) -> bool:
    return all(piece.meaning for piece in chain)


def _two_suits(chain: Sequence[Piece], words: Vocabulary) -> bool:
    """Whether another suit stands beside a card, as in '3 cups wands'."""
    said = (piece.text.removeprefix("of ") for piece in chain if not piece.meanings)
    lone = [suit for suit in said if suit in words.all_suits]
    return any(len(suit) > 2 for suit in lone) or (bool(lone) and len(chain) == 2)


def _mixed(chain: Sequence[Piece], titles: DeckTitles, alone: bool) -> bool:
    """Whether words beside a card may be said of it, and are no card of their own."""
    cards = sum(piece.meaning is not None for piece in chain)
    unknown = [piece for piece in chain if not piece.meanings and not piece.doubt]
    if not cards or not unknown:
        return False
    if not alone or len(unknown) > _MOST_SLIPS:
        return True
    return any(like_mark(piece.text) or not guess.completions(piece, titles) for piece in unknown)


def _whole(chain: Sequence[Piece], doubt: str) -> Piece:
    """All the pieces as one, with the card in it if there is but one.

    It is turned where a slip for a mark of reversal stands beside it.
    """
    words = tuple(word for piece in chain for word in piece.words)
    meant = [piece.meaning for piece in chain if piece.meaning]
    within = meant[0] if len(meant) == 1 else None
    if within and any(like_mark(piece.text) for piece in chain if not piece.meanings):
        within = within[0], True
    return Piece(words, frozenset(), doubt, within)


def _numbered_whole(chain: Sequence[Piece], words: Vocabulary) -> Piece:
    """All the pieces as one, with the card beside the number."""
    named = [piece for piece in chain if not is_number(piece, words)]
    within = _whole(named, "number").within
    if within and any(unmarked(piece.text)[1] for piece in chain if piece not in named):
        within = within[0], True
    return replace(_whole(chain, "number"), within=within)


def _numbered(piece: Piece, words: Vocabulary) -> Piece:
    """A number at the end of cards parted by spaces: a trump, or a card whose suit is to come."""
    return _suit_left_out(piece, words) if _shape(piece, words) else _whole([piece], "number")


# From the entries beside it


def doubted(entries: list[Entry], titles: DeckTitles) -> list[Entry]:
    """The entries of a line, those made unclear that the others cast doubt on."""
    if any(each.stretch.all_turned for each in entries):
        return [_either_way(each) for each in entries]
    words = vocabulary(titles)
    entries = _shared_turns(entries)
    unsuited = {*_before_a_suit(entries, words), *_after_a_suit(entries, words)}
    out = [
        each._replace(piece=_suit_left_out(each.piece, words)) if at in unsuited else each
        for at, each in enumerate(entries)
    ]
    return _own_numbers(out, titles)


def without_all(found: Sequence[Word], words: Vocabulary) -> tuple[list[Word], list[Word]]:
    """The words of an entry, and those at its end that turn every card: 'all reversed'."""
    named = " ".join(word.folded for word in found) in words.names
    for at in range(max(0, len(found) - _LONGEST_OF_ALL), 0 if named else len(found)):
        if turns_all(" ".join(word.folded for word in found[at:])):
            return list(found[:at]), list(found[at:])
    return list(found), []


def _either_way(each: Entry) -> Entry:
    return each._replace(piece=_both_ways(each.piece))


def _both_ways(piece: Piece) -> Piece:
    both = {(key, turned) for key, _ in piece.meanings for turned in (True, False)}
    return replace(piece, meanings=frozenset(both))


def _shared_turns(entries: Sequence[Entry]) -> list[Entry]:
    """A card before 'and' may be reversed with the one after it: 'tower and star reversed'."""
    return [
        _either_way(each) if any(_shares(each.piece, follows) for follows in after) else each
        for at, each in enumerate(entries)
        for after in (entries[at + 1 : at + 2],)
    ]


def _shares(piece: Piece, follows: Entry) -> bool:
    upright = piece.meaning is not None and unmarked(piece.text)[1] is None and not led(piece.text)
    return upright and follows.stretch.joint == "and" and trailed(follows.piece.text)


def _before_a_suit(entries: Sequence[Entry], words: Vocabulary) -> Iterable[int]:
    """Numbers whose suit may stand further on: '3, 5, 7 of wands', '3 & 5w', '10, s'."""
    wanted = ""
    for at in reversed(range(len(entries))):
        own = _shape(entries[at].piece, words)
        if own and wanted in (own, "any"):
            yield at
        else:
            wanted = _asks_for(entries[at], words)


def _shape(piece: Piece, words: Vocabulary) -> str:
    """'figure' or 'numeral' for a lone number that a pip could bear, else ''."""
    if not is_number(piece, words) or unmarked(piece.text)[1] is not None:
        return ""
    if not words.all_ranks.get(piece.text):
        return ""
    return "figure" if piece.text.isdigit() else "numeral"


def _asks_for(entry: Entry, words: Vocabulary) -> str:
    """What number before this entry could share its suit: of its own shape, 'any', or none ''."""
    piece = entry.piece
    if piece.text.removeprefix("of ") in words.all_suits:
        return "any"
    rank = piece.text.split(" ")[0]
    if words.suit_first(piece.text) or (piece.meanings and not _suited(piece)):
        return ""
    if entry.stretch.joint == "and":
        return "figure" if rank[0].isdigit() else "any"
    if rank == piece.text:
        return ""
    return "figure" if rank.isdigit() else "numeral" if rank in words.numerals else ""


def _suited(piece: Piece) -> bool:
    """Whether all it can mean are cards of a suit."""
    return bool(piece.meanings) and not any(
        key.startswith(("major", "extra")) for key, _ in piece.meanings
    )


def _after_a_suit(entries: Sequence[Entry], words: Vocabulary) -> Iterable[int]:
    """Numbers whose suit may have been said before: 'wands 3, 5, 7', '5 of cups & 6'."""
    said = paired = False
    for at, (stretch, piece, _) in enumerate(entries):
        lone = bool(_shape(piece, words))
        if lone and (said or (paired and stretch.joint == "and")):
            yield at
        elif not lone:
            said = words.suit_first(unmarked(piece.text)[0])
            paired = _suited(piece)


def _suit_left_out(piece: Piece, words: Vocabulary) -> Piece:
    ranks = words.all_ranks.get(piece.text, frozenset())
    suited = {(f"{suit}-{rank:02}", False) for suit in facts.SUITS for rank in ranks}
    return replace(piece, meanings=piece.meanings | suited)


def _own_numbers(entries: Sequence[Entry], titles: DeckTitles) -> list[Entry]:
    """Numbers before trumps that bear them, as '16. tower': a place only in a list of places."""
    entries = [_without_nought(each, titles) for each in entries]
    own = [_own_number(each, titles) for each in entries]
    placed = [each.stretch.place is not None and each.first for each in entries]
    if any(is_placed and not is_own for is_placed, is_own in zip(placed, own, strict=True)):
        return list(entries)
    return [
        each._replace(piece=replace(each.piece, meanings=frozenset(), doubt="own", within=meant))
        if is_own and (meant := each.piece.meaning) and _unsure(each.stretch)
        else each
        for each, is_own in zip(entries, own, strict=True)
    ]


def _without_nought(each: Entry, titles: DeckTitles) -> Entry:
    """An entry as '0. fool': there is no such place, so the number can only be the card's own."""
    nought = each.stretch.place == 0 and _own_number(each, titles)
    return each._replace(stretch=replace(each.stretch, place=None)) if nought else each


def _unsure(stretch: Stretch) -> bool:
    return not stretch.named and (stretch.pointed or (stretch.place or 0) > MOST_PLACES)


def _own_number(each: Entry, titles: DeckTitles) -> bool:
    meant, place = each.piece.meaning, each.stretch.place
    if meant is None or not each.first or place is None or each.stretch.beside:
        return False
    return titles.card(meant[0]).arcana == "major" and titles.number(meant[0]) == place
