"""Reads the lines tired people wrote, labelled by hand, and judges how each of them is read.

The labels are judgement (common practice, from memory), made by somebody who had not seen the code.
"""

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from binder.cards.shorthand import Part, read
from binder.cards.titles import STANDARD, DeckTitles

CORPUS = Path(__file__).parent / "corpus" / "tired_lines.tsv"
DECKS = {
    "standard": STANDARD,
    "coins": replace(STANDARD, suits=("Wands", "Cups", "Swords", "Coins")),
}
RIGHT, NEEDLESS, WRONG = "right", "needless", "wrong"


@dataclass(frozen=True)
class Entry:
    """What a careful reader makes of one entry: a card in its place, or None to ask or refuse."""

    card: tuple[str, bool] | None
    place: int
    beside: bool


@dataclass(frozen=True)
class TiredLine:
    """One labelled line; `tolerated` are titles that may be read where it should be asked."""

    uid: str
    deck: DeckTitles
    text: str
    entries: tuple[Entry, ...]
    ask_ok: bool
    tolerated: frozenset[str]
    wanted: str

    def verdict(self) -> str:
        """RIGHT, NEEDLESS for a question nobody needed, WRONG for anything silently another."""
        given = read(self.text, self.deck).parts
        costs = list(_costs(given, self.entries, self, len(given) == len(self.entries)))
        if not costs:
            return WRONG
        return NEEDLESS if min(costs) and not self.ask_ok else RIGHT

    def is_read(self) -> bool:
        """Whether every part is read as a card, and none is asked about."""
        return all(part.card and not part.problem for part in read(self.text, self.deck).parts)

    def places(self) -> list[int | None]:
        """Where each part lies that has a place of its own."""
        return [part.place for part in read(self.text, self.deck).parts if not part.beside]

    def __str__(self) -> str:
        parts = read(self.text, self.deck).parts
        given = " | ".join(_said(part, self.deck) for part in parts)
        return f"{self.uid} {self.text!r}: wanted {self.wanted}, read {given}"


def tired_lines() -> Iterator[TiredLine]:
    """Every line of the corpus."""
    with CORPUS.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE):
            deck = DECKS[row["deck"]]
            tags = row["note"].split("; ")
            read_ok = [tag[8:] for tag in tags if tag.startswith("read-ok=")]
            yield TiredLine(
                row["id"],
                deck,
                row["line"].replace("\\n", "\n"),
                tuple(_entries(row["expected"], deck)),
                "ask-ok" in tags or "refuse-ok" in tags,
                frozenset(read_ok),
                row["expected"],
            )


def _entries(expected: str, deck: DeckTitles) -> Iterator[Entry]:
    keys = {deck.title(key): key for key in deck.keys}
    held: set[int] = set()
    place = 0
    for seat in expected.split(" | "):
        for at, words in enumerate(seat.split(" + ")):
            typed, rest = 0, words
            if words.startswith("@"):
                number, _, rest = words[1:].partition(" ")
                typed = int(number)
            if at == 0:
                place = typed or next(n for n in range(1, 99) if n not in held)
                held.add(place)
            title = rest.removesuffix(" reversed")
            card = None if title in ("ASK", "REFUSE") else (keys[title], title != rest)
            yield Entry(card, place, at > 0)


def _costs(
    given: Sequence[Part], wanted: Sequence[Entry], line: TiredLine, same: bool
) -> Iterator[int]:
    """Cards asked about in vain, for each way to lay the parts over the entries; none if wrong.

    A part that is asked about may stand for any run of entries; one that is read is one entry.
    """
    if not given:
        if not wanted:
            yield 0
        return
    part, *rest = given
    if part.card is None or part.problem:
        for size in range(len(wanted) + 1):
            vain = sum(entry.card is not None for entry in wanted[:size]) or size == 0
            for cost in _costs(rest, wanted[size:], line, same):
                yield cost + vain
    elif wanted and _agrees(part, wanted[0], line, same):
        yield from _costs(rest, wanted[1:], line, same)


def _agrees(part: Part, entry: Entry, line: TiredLine, same: bool) -> bool:
    assert part.card is not None
    if entry.card is None:
        return line.deck.title(part.card.key) in line.tolerated and not part.reversed
    seated = not same or (part.place, part.beside) == (entry.place, entry.beside)
    return (part.card.key, part.reversed) == entry.card and seated


def _said(part: Part, deck: DeckTitles) -> str:
    if part.card is None or part.problem:
        return f"@{part.place} “{part.text}” asked ({part.problem})"
    turned = " reversed" if part.reversed else ""
    return f"@{part.place} {'+ ' * part.beside}{deck.title(part.card.key)}{turned}"
