"""Reads the hand-labelled corpus and counts how the recogniser does on it.

Two ways of marking: ⟦surface|key⟧ and ‹false friend› in leaves parted by '%%', and
{surface=key} and {~false friend} in passages that are one leaf each, by hands that knew neither the
program nor the other marks. In both, a link on words that bear no mark is a wrong one.
"""

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from binder.cards.prose import Lexicon, find
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles

CORPUS = Path(__file__).parent / "corpus"
LABEL = re.compile(
    r"⟦(?P<name>[^⟦⟧|]+)\|(?P<key>[^⟦⟧|]+)⟧|‹(?P<friend>[^‹›]+)›"
    r"|\{~(?P<friend_too>[^{}]+)\}|\{(?P<name_too>[^{}=]+)=(?P<key_too>[^{}]+)\}"
)
OLDER = TRADITIONS[:-1]
"""The letters speak of older packs beside the common one; none of playing cards."""


@dataclass
class Leaf:
    """Plain text of one leaf; true mentions as (start, end, key); false friends as (start, end)."""

    text: str = ""
    mentions: list[tuple[int, int, str]] = field(default_factory=list)
    friends: list[tuple[int, int]] = field(default_factory=list)


@dataclass
class Score:
    """Counts over some leaves, and the places where machine and hand differ."""

    right: int = 0
    labelled: int = 0
    wrong: list[str] = field(default_factory=list)
    missed: list[str] = field(default_factory=list)
    friends: int = 0
    friends_linked: int = 0

    @property
    def precision(self) -> float:
        return self.right / (self.right + len(self.wrong))

    @property
    def recall(self) -> float:
        return self.right / self.labelled


def read_leaf(marked: str) -> Leaf:
    leaf, at = Leaf(), 0
    for label in LABEL.finditer(marked):
        leaf.text += marked[at : label.start()]
        start = len(leaf.text)
        name, friend = label["name"] or label["name_too"], label["friend"] or label["friend_too"]
        leaf.text += name or friend
        if name:
            leaf.mentions.append((start, len(leaf.text), label["key"] or label["key_too"]))
        else:
            leaf.friends.append((start, len(leaf.text)))
        at = label.end()
    leaf.text += marked[at:]
    return leaf


def leaves(name: str) -> Iterator[Leaf]:
    first, *body = (CORPUS / name).read_text(encoding="utf-8").split("\n%%\n")
    return (read_leaf(each) for each in body or [first])


def lexicon(name: str) -> Lexicon:
    if name.startswith("letters"):
        return Lexicon(OLDER)
    if not name.startswith("saltings"):
        return Lexicon()
    own = tomllib.loads((CORPUS / "saltings_deck.toml").read_text(encoding="utf-8"))
    return Lexicon((STANDARD, DeckTitles.from_dict(own)))


def score(*names: str) -> Score:
    total = Score()
    for name in names:
        words = lexicon(name)
        for leaf in leaves(name):
            add(total, leaf, words)
    return total


def add(total: Score, leaf: Leaf, words: Lexicon) -> None:
    """A mention is right if card and words agree; whether the article is in it counts not."""
    found = {_bare(leaf.text, *each) for each in find(leaf.text, words)}
    wanted = {_bare(leaf.text, *each) for each in leaf.mentions}
    total.right += len(found & wanted)
    total.labelled += len(wanted)
    total.wrong += [_shown(leaf.text, *each) for each in sorted(found - wanted)]
    total.missed += [_shown(leaf.text, *each) for each in sorted(wanted - found)]
    total.friends += len(leaf.friends)
    total.friends_linked += sum(
        any(start < end_friend and friend < end for start, end, _ in found - wanted)
        for friend, end_friend in leaf.friends
    )


def _bare(text: str, start: int, end: int, key: str) -> tuple[int, int, str]:
    article = re.match(r"(?:the|an?)\s+", text[start:end], re.IGNORECASE)
    return (start + article.end() if article else start, end, key)


def _shown(text: str, start: int, end: int, key: str) -> str:
    around = f"{text[max(0, start - 40) : start]}[{text[start:end]}]{text[end : end + 30]}"
    return f"{key}: {around}".replace("\n", "/")
