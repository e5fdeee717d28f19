"""The cards of a reading while they are being laid.

One line of shorthand is the whole state. Laying, turning, moving and taking up a card rewrite the
line, so that what was typed, the faces picked and the layout cannot say different things.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from binder.cards.facts import Card
from binder.cards.line import counted, lowest_free
from binder.cards.shorthand import Line, Part, fit, read, shortest
from binder.cards.spreads import Place, Spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.readings import Laid

_PLACE = re.compile(r"^(?:place\s+)?\d+\s*[:=]\s*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Seat:
    """One place of the spread and what was written for it; `n` counts in the order of laying."""

    n: int
    place: Place
    part: Part | None = None

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
        self.last: int | None = None
        """The seat laid or turned last, or None."""
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
        return next((n for n in typed if self._starts(n) == self.typing), self._aim)

    @property
    def taken(self) -> Mapping[str, int]:
        """Key of each card laid -> its seat."""
        return self._taken

    @property
    def size(self) -> int:
        """How many places the spread has."""
        return len(self.spread.places)

    @property
    def aim(self) -> int | None:
        """The seat the next card goes to; None when no seat is free."""
        return self._aim

    def seat(self, n: int) -> Seat:
        """The seat of that number, from 1."""
        return self._seats[n - 1]

    # Changing it

    def write(self, text: str) -> None:
        """Take the line as the student has typed it."""
        if text != self._text:
            self._take(text)
            self.last = next((p.place for p in reversed(self._line.parts) if self._lies(p)), None)
            self._tell()

    def attend(self, start: int | None, *, hushed: bool = False) -> None:
        """Say which part the caret touches, by where it starts, and whether it is unfinished."""
        if (start, hushed) != (self.typing, self.hushed):
            self.typing, self.hushed = start, hushed
            self._tell()

    def lay(self, key: str, *, reversed: bool = False) -> None:
        """Lay a card in the next seat; CanMend when it lies already or no seat is free."""
        card, n = self.titles.card(key), self._aim
        if key in self._taken:
            title = self.titles.title(key)
            raise CanMend(f"{title} lies in place {self._taken[key]} already; a deck has it once.")
        if n is None:
            raise CanMend("Every place has its card; take one up to lay another.")
        self._rewrite(self._words() | {n: shortest(card, reversed, self.titles)}, last=n)

    def turn(self, n: int) -> None:
        """Turn the card in a seat, upright to reversed or back; nothing where none lies."""
        seat = self.seat(n)
        if seat.card is not None:
            turned = shortest(seat.card, not seat.reversed, self.titles)
            self._rewrite(self._words() | {n: turned}, aim=self._chosen(), last=n)

    def take_up(self, n: int) -> None:
        """Take what lies in a seat back into the deck; the next card goes there."""
        words = self._words()
        if words.pop(n, None) is not None:
            self._rewrite(words, aim=n)

    def move(self, n: int, to: int) -> None:
        """Move the card of a seat to another; two cards change places."""
        words = self._words()
        if n != to and n in words and 1 <= to <= self.size:
            words[to], other = words[n], words.get(to)
            if other is None:
                del words[n]
            else:
                words[n] = other
            self._rewrite(words, last=to)

    def aim_at(self, n: int) -> None:
        """Choose where the next card goes; nothing where a seat is taken."""
        if self.seat(n).part is None:
            self._rewrite(self._words(), aim=n, last=self.last)

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
        words, kept = self._words(), self._cards()
        self.titles = titles
        for n, (key, turned) in kept.items():
            if key in titles.keys and _read(words[n], titles) != (key, turned):
                words[n] = shortest(titles.card(key), turned, titles)
        if kept and words != self._words():
            self._rewrite(words, aim=self._chosen(), last=self.last)
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
        whole = Line(tuple(p for p in self._line.parts if p is not self._open))
        return fit(whole, self.size, self.spread.name)

    def laid(self) -> list[Laid]:
        """The cards for a reading; CanMend with the sentence of `wrong` while it is not whole."""
        wrong = self.wrong()
        if wrong:
            raise CanMend(wrong)
        return [
            Laid(s.place.n, s.card.key, s.reversed, s.place.label, self.titles.title(s.card.key))
            for s in self._seats
            if s.card is not None
        ]

    def progress(self) -> str:
        """'Laid so far: three of ten'."""
        count, size = len(self._taken), self.size
        if count == size:
            return "The card is laid" if size == 1 else f"All {counted(size)} are laid"
        return f"Laid so far: {counted(count)} of {counted(size)}"

    # Reading the line

    def _take(self, text: str) -> None:
        self._text = text
        self._line = read(text, self.titles)
        self._open = self._open_place()
        parts = {p.place: p for p in reversed(self._line.parts) if self._seated(p)}
        self._seats = tuple(
            Seat(n, place, parts.get(n)) for n, place in enumerate(self.spread.places, 1)
        )
        self._marks = tuple(self._marked())
        self._taken = {s.card.key: s.n for s in self._seats if s.card is not None}
        self._aim = self._open.place if self._open else self._natural(parts)

    def _tell(self) -> None:
        for told in tuple(self._told):
            told()

    def _open_place(self) -> Part | None:
        """A place typed at the end whose card is still to come: '7:'."""
        last = self._line.parts[-1] if self._line.parts else None
        if last is None or last.card or not last.place or _bare(last):
            return None
        held = any(p.place == last.place for p in self._line.parts[:-1])
        return None if held or last.place > self.size else last

    def _seated(self, part: Part) -> bool:
        return part.place is not None and part is not self._open and bool(_bare(part))

    def _starts(self, n: int) -> int:
        part = self.seat(n).part
        return part.start if part else -1

    def _lies(self, part: Part) -> bool:
        return part.card is not None and part.place is not None and part.place <= self.size

    def _marked(self) -> Iterator[Part]:
        for part in self._line.parts:
            if part.place is not None and part.place > self.size and not part.problem:
                yield replace(part, problem=self._beyond(part))
            elif part.problem and part is not self._open:
                yield part

    def _beyond(self, part: Part) -> str:
        have = f"{counted(self.size)} place{'' if self.size == 1 else 's'}"
        if _PLACE.match(part.text):
            return f"This spread has {have}; there is no place {part.place}."
        return f"This spread has {have}; “{part.text}” is one card too many."

    def _natural(self, held: Mapping[int | None, Part]) -> int | None:
        n = lowest_free(held)
        return n if n <= self.size else None

    def _chosen(self) -> int | None:
        return self._open.place if self._open else None

    def _cards(self) -> dict[int, tuple[str, bool]]:
        """Seat -> key and turn, cards beyond the spread's places too."""
        return {
            p.place: (p.card.key, p.reversed)
            for p in self._line.parts
            if p.card is not None and p.place is not None
        }

    # Writing the line

    def _words(self) -> dict[int, str]:
        """Seat -> what was typed for it, its place left out."""
        parts = reversed(self._line.parts)
        return {p.place: _bare(p) for p in parts if p.place is not None and self._seated(p)}

    def _rewrite(
        self, words: Mapping[int, str], *, aim: int | None = None, last: int | None = None
    ) -> None:
        """Write the line anew from seats and words; parts that have no place go to its end."""
        loose = self._loose()
        self.last = last
        self._take(written(words, self.size, loose, None if loose else aim))
        self._tell()

    def _loose(self) -> list[str]:
        """What was typed for no seat, or for a seat that an earlier part has."""
        first = {p.place: p for p in reversed(self._line.parts) if self._seated(p)}
        return [
            p.text
            for p in self._line.parts
            if p.place is None or (self._seated(p) and first[p.place] is not p)
        ]


def written(
    words: Mapping[int, str], size: int, loose: list[str] | None = None, aim: int | None = None
) -> str:
    """A line of shorthand that puts words in their seats, from 1; open for the next card.

    `loose` words have no seat; `aim` is a free seat to name at the end.
    """
    held: set[int] = set()
    out = []
    for n, text in sorted(words.items()):
        out.append(text if n == lowest_free(held) else f"{n}: {text}")
        held.add(n)
    line = ", ".join([*out, *(loose or [])])
    free = lowest_free(held)
    if aim is not None and aim not in held and aim != free:
        return f"{line}, {aim}: " if line else f"{aim}: "
    return f"{line}, " if line and free <= size else line


def line_of(laid: Mapping[int, tuple[str, bool]], spread: Spread, titles: DeckTitles) -> str:
    """The line for cards already laid: number of place -> key and whether reversed."""
    seats = {place.n: n for n, place in enumerate(spread.places, 1)}
    words = {
        seats[n]: shortest(titles.card(key), turned, titles) for n, (key, turned) in laid.items()
    }
    return written(words, len(spread.places))


def _bare(part: Part) -> str:
    return _PLACE.sub("", part.text)


def _read(text: str, titles: DeckTitles) -> tuple[str, bool] | None:
    parts = read(text, titles).parts
    if len(parts) != 1 or parts[0].card is None:
        return None
    return parts[0].card.key, parts[0].reversed
