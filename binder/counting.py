"""Numbers beside what they count: '1 card', 'two places', '12 leaves'; and choices counted up."""

from collections.abc import Iterable

_SPELLED = (
    "none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
)  # fmt: skip
_MANY = {"leaf": "leaves", "entry": "entries", "is": "are", "was": "were"}


def noun_for(number: int, one: str, many: str = "") -> str:
    """The noun, or the verb, that goes with a number: 'card' with 1, 'cards' with any other.

    `many` is said where 's' is not enough, unless the program knows the word, as 'leaf'.
    """
    return one if number == 1 else many or _MANY.get(one) or f"{one}s"


def counted(number: int, one: str, many: str = "") -> str:
    """'1 card', '0 cards', '3 leaves'."""
    return f"{number} {noun_for(number, one, many)}"


def either(keys: Iterable[str]) -> str:
    """What can be chosen: 'a4, letter or a5'."""
    *most, last = keys
    return f"{', '.join(most)} or {last}" if most else last


def spelled(number: int) -> str:
    """A count in words up to twelve, in figures above; 'none' for 0."""
    return _SPELLED[number] if number < len(_SPELLED) else str(number)


def times(count: int) -> str:
    """'never', 'once', 'twice', 'three times', '13 times'."""
    return ("never", "once", "twice")[count] if count < 3 else f"{spelled(count)} times"


def spelled_out(number: int, one: str, many: str = "") -> str:
    """'one card', 'three places', '13 cards'."""
    return f"{spelled(number)} {noun_for(number, one, many)}"
