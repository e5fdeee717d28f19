"""The cards of a reading while they are being laid.

One line of shorthand is the whole state. Laying, turning, moving and taking up a card rewrite the
line, so that what was typed, the faces picked and the layout cannot say different things.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from binder.cards.facts import Card
from binder.cards.line import lowest_free
from binder.cards.shorthand import CardLine, Part, fit, read, shortest
from binder.cards.spreads import Place, Spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.counting import spelled, spelled_out
from binder.errors import CanMend
from binder.study.readings.hand_line import (
    Aim,
    kept,
    names_place,
    open_part,
    reworded,
    sort,
    written,
)
from binder.study.readings.readings import Laid


@dataclass(frozen=True, slots=True)
class Seat:
    """One place of the spread and what was written for it; `n` counts in the order of laying."""

    n: int
    place: Place
    part: Part | None = None
    beside: tuple[Part, ...] = ()
    """What was written for cards that lie beside the one here, to clarify it."""

    @property
    def parts(self) -> tuple[Part, ...]:
        """What was written for the card here, then for those beside it."""
        return (self.part, *self.beside) if self.part else ()

    @property
    def card(self) -> Card | None:
        """The card that lies here, or None."""
        return self.part.card if self.part else None

    @property
    def reversed(self) -> bool:
        """Whether the card that lies here is reversed."""
        return self.part is not None and self.part.reversed


class Hand:
    """A spread being filled. Listeners are called after every change of line, spread or deck."""

    def __init__(self, spread: Spread, titles: DeckTitles = STANDARD) -> None:
        self.spread, self.titles = spread, titles
        self.last = ""
        """Key of the card laid or turned last, or ''."""
        self.typing: int | None = None
        """Where the part at the caret starts, or None."""
        self.hushed = False
        """Whether that part may still become a card as it is typed, and is not called wrong."""
        self._told: list[Callable[[], None]] = []
        self._take("")

    def listen(self, told: Callable[[], None]) -> None:
        """Call `told` after each change."""
        self._told.append(told)

    # What lies there

    @property
    def text(self) -> str:
        """The line as typed, or as last rewritten."""
        return self._text

    @property
    def parts(self) -> tuple[Part, ...]:
        """Every part of the line, understood or not."""
        return self._line.parts

    @property
    def seats(self) -> tuple[Seat, ...]:
        """Every place of the spread in the order of laying."""
        return self._seats

    @property
    def marks(self) -> tuple[Part, ...]:
        """Parts of the line to mend, in order, each with its sentence."""
        return self._marks

    @property
    def slips(self) -> tuple[Part, ...]:
        """The marks without the part that may still become a card."""
        hushed = self.typing if self.hushed else None
        return tuple(mark for mark in self._marks if mark.start != hushed)

    @property
    def pending(self) -> int | None:
        """The seat to show as the next: that of the part being typed, else `aim`."""
        typed = (s.n for s in self._seats if s.part and s.card is None)
        return next((n for n in typed if self._starts(n) == self.typing), self.aim)

    @property
    def taken(self) -> Mapping[str, int]:
        """Key of each card laid -> its seat, or that of the card it lies beside."""
        return self._taken

    @property
    def count(self) -> int:
        """How many places have their card."""
        return sum(seat.card is not None for seat in self._seats)

    @property
    def size(self) -> int:
        """How many places the spread has."""
        return len(self.spread.places)

    @property
    def aim(self) -> int | None:
        """The seat the next card goes to; None when no seat is free."""
        return self._aim.seat if self._aim else None

    @property
    def beside(self) -> bool:
        """Whether the next card goes beside the one that lies in that seat."""
        return self._aim is not None and self._aim.beside

    def seat(self, n: int) -> Seat:
        """The seat of that number, from 1."""
        return self._seats[n - 1]

    def part_of(self, key: str) -> Part | None:
        """What was written for a card that lies in a seat or beside another."""
        n = self._taken.get(key)
        parts = self.seat(n).parts if n is not None else ()
        return next((part for part in parts if part.card and part.card.key == key), None)

    # Changing it

    def write(self, text: str) -> None:
        """Take the line as the student has typed it."""
        if text != self._text:
            self._take(text)
            lying = (part for part in reversed(self._line.parts) if self._lies(part))
            self.last = next((part.card.key for part in lying if part.card), "")
            self._tell()

    def attend(self, start: int | None, *, hushed: bool = False) -> None:
        """Say which part the caret touches, by where it starts, and whether it is unfinished."""
        if (start, hushed) != (self.typing, self.hushed):
            self.typing, self.hushed = start, hushed
            self._tell()

    def lay(self, key: str, *, reversed: bool = False) -> None:
        """Lay a card in the next seat; CanMend when it lies already or no seat is free."""
        card, aim = self.titles.card(key), self._aim
        if key in self._taken:
            title = self.titles.title(key)
            raise CanMend(f"{title} lies in place {self._taken[key]} already; a deck has it once.")
        if aim is None:
            raise CanMend("Every place has its card; take one up to lay another.")
        piles = self._piles()
        piles.setdefault(aim.seat, []).append(shortest(card, reversed, self.titles))
        self._rewrite(piles, last=key)

    def turn(self, n: int) -> None:
        """Turn the card in a seat, upright to reversed or back; nothing where none lies."""
        seat = self.seat(n)
        if seat.card is not None:
            self.turn_card(seat.card.key)

    def turn_card(self, key: str) -> None:
        """Turn a card that lies in a seat or beside another."""
        n, part = self._taken.get(key), self.part_of(key)
        if n is not None and part is not None:
            piles, at = self._piles(), self._place_in_pile(key)
            piles[n][at] = shortest(self.titles.card(key), not part.reversed, self.titles)
            self._rewrite(piles, aim=self._chosen(), last=key)

    def take_up(self, n: int) -> None:
        """Take what lies in a seat back into the deck, with what lies beside it; the next card
        goes there.
        """
        piles = self._piles()
        if piles.pop(n, None) is not None:
            self._rewrite(piles, aim=Aim(n))

    def take_card_up(self, key: str) -> None:
        """Take a card back into the deck, whether it has a seat or lies beside another."""
        n = self._taken.get(key)
        at = self._place_in_pile(key)
        if n is not None and at:
            piles = self._piles()
            del piles[n][at]
            self._rewrite(piles)
        elif n is not None:
            self.take_up(n)

    def move(self, n: int, to: int) -> None:
        """Move the card of a seat to another; two cards change places, with what lies beside."""
        piles = self._piles()
        if n != to and n in piles and 1 <= to <= self.size:
            key = self._key_in(n)
            moved, other = piles.pop(n), piles.pop(to, None)
            piles[to] = moved
            if other is not None:
                piles[n] = other
            self._rewrite(piles, last=key)

    def move_card(self, key: str, to: int) -> None:
        """Move a card to a seat. One that lay beside another goes beside the card there, if any."""
        n, at = self._taken.get(key), self._place_in_pile(key)
        if n is None or not 1 <= to <= self.size:
            return
        if at == 0:
            self.move(n, to)
        elif n != to:
            piles = self._piles()
            piles.setdefault(to, []).append(piles[n].pop(at))
            self._rewrite(piles, last=key)

    def aim_at(self, n: int) -> None:
        """Choose where the next card goes; nothing where a seat is taken."""
        if self.seat(n).part is None:
            self._rewrite(self._piles(), aim=Aim(n), last=self.last)

    def aim_beside(self, n: int) -> None:
        """Let the next card lie beside that of a seat, to clarify it; nothing where none lies."""
        if self.seat(n).card is not None:
            self._rewrite(self._piles(), aim=Aim(n, beside=True), last=self.last)

    def mend(self, part: Part, text: str) -> None:
        """Write `text` in the stead of a part of the line."""
        self.write(self._text[: part.start] + text + self._text[part.end :])

    def change_spread(self, spread: Spread) -> None:
        """Lay the same line in another spread; what has no place there stays in the line."""
        self.spread = spread
        self._take(self._text)
        self._tell()

    def change_titles(self, titles: DeckTitles) -> None:
        """Read with another deck's titles; cards already understood stay the same cards."""
        if titles == self.titles:
            return
        kept = self._piles()
        piles = {
            n: [reworded(part, titles) for part in pile] for n, pile in self._sorted.piles.items()
        }
        self.titles = titles
        if piles != kept:
            self._rewrite(piles, aim=self._chosen(), last=self.last)
        else:
            self._take(self._text)
            self._tell()

    # What is said of it

    def wrong(self) -> str:
        """One sentence on the first thing that keeps this from being a whole reading, or ''."""
        if not self._line.parts:
            return "No card is laid yet; type the cards in this line, or pick their faces."
        slips = [p for p in self._marks if p.place is None or p.place <= self.size]
        if slips:
            return slips[0].problem
        if self._open is not None and self._open.beside:
            return self._open.problem
        whole = CardLine(tuple(p for p in self._line.parts if p is not self._open))
        return fit(whole, self.size, self.spread.name)

    def laid(self) -> list[Laid]:
        """The cards for a reading; CanMend with the sentence of `wrong` while it is not whole."""
        wrong = self.wrong()
        if wrong:
            raise CanMend(wrong)
        return [
            Laid(s.place.n, p.card.key, p.reversed, s.place.label, self.titles.title(p.card.key))
            for s in self._seats
            for p in s.parts
            if p.card is not None
        ]

    def progress(self) -> str:
        """'Laid so far: three of ten'."""
        count, size = self.count, self.size
        if count == size:
            return "The card is laid" if size == 1 else f"All {spelled(size)} are laid"
        return f"Laid so far: {spelled(count)} of {spelled(size)}"

    # Reading the line

    def _take(self, text: str) -> None:
        self._text = text
        self._line = read(text, self.titles)
        self._open = open_part(self._line, self.size)
        self._sorted = sort(part for part in self._line.parts if part is not self._open)
        self._seats = tuple(self._seated())
        self._marks = tuple(self._marked())
        self._taken = {
            part.card.key: seat.n for seat in self._seats for part in seat.parts if part.card
        }
        self._aim = self._chosen() or self._natural()

    def _seated(self) -> Iterator[Seat]:
        for n, place in enumerate(self.spread.places, 1):
            own, *beside = self._sorted.piles.get(n, (None,))
            yield Seat(n, place, own, tuple(part for part in beside if part))

    def _tell(self) -> None:
        for told in tuple(self._told):
            told()

    def _starts(self, n: int) -> int:
        part = self.seat(n).part
        return part.start if part else -1

    def _lies(self, part: Part) -> bool:
        return part.card is not None and part.place is not None and part.place <= self.size

    def _marked(self) -> Iterator[Part]:
        for part in self._line.parts:
            if part.place is not None and part.place > self.size and not part.problem:
                if not part.beside:  # it goes where the card it lies beside will go
                    yield replace(part, problem=self._beyond(part))
            elif part.problem and part is not self._open:
                yield part

    def _beyond(self, part: Part) -> str:
        have = spelled_out(self.size, "place")
        if names_place(part):
            return f"This spread has {have}; there is no place {part.place}."
        return f"This spread has {have}; “{part.text}” is one card too many."

    def _natural(self) -> Aim | None:
        n = lowest_free(self._sorted.piles)
        return Aim(n) if n <= self.size else None

    def _chosen(self) -> Aim | None:
        opened = self._open
        return Aim(opened.place, opened.beside) if opened and opened.place else None

    def _key_in(self, n: int) -> str:
        card = self.seat(n).card
        return card.key if card else ""

    def _place_in_pile(self, key: str) -> int:
        """0 for a card with a seat of its own, from 1 for one that lies beside another."""
        n, part = self._taken.get(key), self.part_of(key)
        return self.seat(n).parts.index(part) if n is not None and part is not None else 0

    # Writing the line

    def _piles(self) -> dict[int, list[str]]:
        """Seat -> what was typed for its card, then for those beside it."""
        return {
            n: [kept(part, self.titles) for part in pile] for n, pile in self._sorted.piles.items()
        }

    def _rewrite(
        self, piles: Mapping[int, list[str]], *, aim: Aim | None = None, last: str = ""
    ) -> None:
        """Write the line anew from seats and words; parts that have no place go to its end."""
        loose = [part.text for part in self._sorted.loose]
        self.last = last
        self._take(written(piles, self.size, loose, None if loose else aim))
        self._tell()
