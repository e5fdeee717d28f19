"""What became of a line of shorthand: its parts, where their cards lie, and what to mend."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from binder.cards.facts import Card
from binder.cards.titles import DeckTitles
from binder.counting import spelled, spelled_out


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing a part may have meant; `text` is what to write in its stead."""

    text: str
    card: Card
    reversed: bool
    note: str
    """Why it is offered, in a few words: 'spelt nearly so'."""


@dataclass(frozen=True, slots=True)
class Suggestion:
    """What line[start:end] may become while it is being typed."""

    text: str
    start: int
    end: int
    card: Card
    reversed: bool
    note: str


@dataclass(frozen=True, slots=True)
class Part:
    """One card of a line, or what could not be read as one."""

    text: str
    """As typed, place and mark of reversal included; line[start:end]."""
    start: int
    end: int
    place: int | None
    """Where it lies, from 1: as typed, or the lowest place free; None for a card given twice."""
    card: Card | None
    reversed: bool
    problem: str
    """One sentence, or '' if all is well. A card given twice still names its card."""
    choices: tuple[Choice, ...] = ()
    beside: bool = False
    """Whether it clarifies the card in `place`, beside which it lies, instead of lying there."""
    lead: int = 0
    """How many characters of `text` give its place and plus sign."""


@dataclass(frozen=True, slots=True)
class CardLine:
    """A whole line, read. Parts not understood keep their place, so that no other card moves."""

    parts: tuple[Part, ...]

    @property
    def laid(self) -> Mapping[int, Part]:
        """Place -> part, for every card that can be laid in a place of its own."""
        return {
            part.place: part
            for part in self.parts
            if part.card and part.place is not None and not part.problem and not part.beside
        }

    @property
    def problems(self) -> tuple[str, ...]:
        """The sentence of every part that needs mending, in order."""
        return tuple(part.problem for part in self.parts if part.problem)


MOST_PLACES = 13
"""A spread of more is rare; a higher number before a trump that bears it may not be a place."""


def before_card(place: int) -> str:
    """What is written before a card for its place: '4: ', or 'place 16: '."""
    return f"{place}: " if place <= MOST_PLACES else f"place {place}: "


def lowest_free(taken: Iterable[int | None]) -> int:
    """The lowest number from 1 that is not among those taken."""
    held = set(taken)
    return next(place for place in range(1, len(held) + 2) if place not in held)


def seated(parts: Iterable[Part], titles: DeckTitles) -> Iterator[Part]:
    """The parts with their places, cards and places given twice marked.

    Takes the parts from left to right: a typed place holds, others go to the lowest free one; what
    lies beside a card goes to the place typed, or that of the card before it.
    """
    table = _Table(titles)
    for part in parts:
        yield table.beside(part) if part.beside else table.alone(part)


class _Table:
    """What lies where while the parts of a line are laid one after the other."""

    def __init__(self, titles: DeckTitles) -> None:
        self._titles = titles
        self._held: dict[int, Part] = {}
        self._seen: set[str] = set()
        self._lowest = 1
        self._last: int | None = None
        """Where the part before lies, or None."""

    def alone(self, part: Part) -> Part:
        """A part in a place of its own."""
        clash = self._twice(part) or self._taken(part)
        while self._lowest in self._held:
            self._lowest += 1
        if clash and not part.problem:
            if part.place is None:  # it keeps its place, so that later cards do not move up
                self._held[self._lowest] = part
            return self._nowhere(part, clash)
        placed = self._laid(part, self._lowest if part.place is None else part.place)
        self._held.setdefault(placed.place or 0, placed)
        return placed

    def beside(self, part: Part) -> Part:
        """A part beside the card of a place."""
        place = self._last if part.place is None else part.place
        if place is None or place not in self._held:
            return self._nowhere(part, _nothing_beside(part))
        twice = self._twice(part)
        return self._nowhere(part, twice) if twice else self._laid(part, place)

    def _laid(self, part: Part, place: int) -> Part:
        self._last = place
        if part.card is not None:
            self._seen.add(part.card.key)
        return replace(part, place=place)

    def _nowhere(self, part: Part, problem: str) -> Part:
        self._last = None
        return replace(part, place=None, problem=problem)

    def _twice(self, part: Part) -> str:
        if part.card is None or part.card.key not in self._seen:
            return ""
        title = self._titles.title(part.card.key)
        return f"{title} is in this line twice; a deck has it once, so change one of the two."

    def _taken(self, part: Part) -> str:
        if part.place is None or part.place not in self._held:
            return ""
        other = self._held[part.place].card
        holds = f"already holds {self._titles.title(other.key)}" if other else "is already taken"
        return f"Place {part.place} {holds}; give this card another place."


def _nothing_beside(part: Part) -> str:
    if part.place is None:
        return "A card after “+” lies beside the one before it, and there is none before it."
    return f"No card lies in place {part.place} yet; write that one first, then “+”."


def fit(line: CardLine, size: int, spread: str = "") -> str:
    """One sentence if the line has too few or too many cards for a spread of that size, else ''.

    `spread` is its name, as 'Five-card cross'. Parts not understood are counted as cards, those
    that lie beside others are not.
    """
    own = [part for part in line.parts if not part.beside]
    beyond = [part.place for part in own if part.place is not None and part.place > size]
    count = len(own)
    if count == size:
        what = f"{_article(spread)} has places 1 to {size}; there is no place"
        return f"{what} {beyond[0]}." if beyond else ""
    return f"{_article(spread)} takes {spelled_out(size, 'card')}; this line has {spelled(count)}."


def _article(spread: str) -> str:
    """'A five-card cross', 'A Celtic Cross'; 'This spread' where an article would not go."""
    first, *rest = spread.split() or [""]
    if not first or "card" in (first.lower(), *(word.lower().rstrip("s") for word in rest)):
        return "This spread"
    plain = not any(word[0].isupper() for word in rest)
    name = spread[0].lower() + spread[1:] if plain else spread
    return f"{'An' if name[0].lower() in 'aeiou' else 'A'} {name}"
