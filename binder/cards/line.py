"""What became of a line of shorthand: its parts, where their cards lie, and what to mend."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from binder.cards.facts import Card
from binder.cards.titles import DeckTitles


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


@dataclass(frozen=True, slots=True)
class Line:
    """A whole line, read. Parts not understood keep their place, so that no other card moves."""

    parts: tuple[Part, ...]

    @property
    def laid(self) -> Mapping[int, Part]:
        """Place -> part, for every card that can be laid."""
        return {
            part.place: part
            for part in self.parts
            if part.card is not None and part.place is not None and not part.problem
        }

    @property
    def problems(self) -> tuple[str, ...]:
        """The sentence of every part that needs mending, in order."""
        return tuple(part.problem for part in self.parts if part.problem)

    @property
    def next_place(self) -> int:
        """The lowest place still free."""
        return lowest_free(part.place for part in self.parts)


def lowest_free(taken: Iterable[int | None]) -> int:
    """The lowest number from 1 that is not among those taken."""
    held = set(taken)
    return next(place for place in range(1, len(held) + 2) if place not in held)


def seated(parts: Iterable[Part], titles: DeckTitles) -> Iterator[Part]:
    """The parts with their places, cards and places given twice marked.

    Takes the parts from left to right: a typed place holds, others go to the lowest free one.
    """
    held: dict[int, Part] = {}
    seen: set[str] = set()
    lowest = 1
    for part in parts:
        problem = part.problem or _clash(part, held, seen, titles)
        if problem and not part.problem:
            yield replace(part, place=None, problem=problem)
            continue
        while lowest in held:
            lowest += 1
        place = lowest if part.place is None else part.place
        placed = replace(part, place=place)
        held.setdefault(place, placed)
        if part.card is not None:
            seen.add(part.card.key)
        yield placed


def _clash(part: Part, held: Mapping[int, Part], seen: set[str], titles: DeckTitles) -> str:
    if part.card is not None and part.card.key in seen:
        title = titles.title(part.card.key)
        return f"{title} is in this line twice; a deck has it once, so change one of the two."
    if part.place is not None and part.place in held:
        other = held[part.place].card
        holds = f"already holds {titles.title(other.key)}" if other else "is already taken"
        return f"Place {part.place} {holds}; give this card another place."
    return ""


_COUNTS = (
    "none",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)


def fit(line: Line, size: int, spread: str = "") -> str:
    """One sentence if the line has too few or too many cards for a spread of that size, else ''.

    `spread` is its name, as 'Five-card cross'. Parts not understood are counted as cards.
    """
    beyond = [part.place for part in line.parts if part.place is not None and part.place > size]
    count = len(line.parts)
    if count == size:
        what = f"{_article(spread)} has places 1 to {size}; there is no place"
        return f"{what} {beyond[0]}." if beyond else ""
    return f"{_article(spread)} takes {_cards(size)}; this line has {counted(count)}."


def _article(spread: str) -> str:
    """'A five-card cross', 'A Celtic Cross'; 'This spread' where an article would not go."""
    first, *rest = spread.split() or [""]
    if not first or "card" in (first.lower(), *(word.lower().rstrip("s") for word in rest)):
        return "This spread"
    plain = not any(word[0].isupper() for word in rest)
    name = spread[0].lower() + spread[1:] if plain else spread
    return f"{'An' if name[0].lower() in 'aeiou' else 'A'} {name}"


def counted(number: int) -> str:
    """A count in words up to twelve, in figures above."""
    return _COUNTS[number] if number < len(_COUNTS) else str(number)


def _cards(number: int) -> str:
    return f"{counted(number)} card{'' if number == 1 else 's'}"
