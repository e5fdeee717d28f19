"""Card names in prose, against a bare scan for words over the same text, in processor seconds;
and text made to be slow to read, against itself eight times as long.
"""

import re
from itertools import count
from time import process_time

from measuring import ROUNDS, Row, compared

from binder.cards.prose import Lexicon, find, forget
from tests.cards.prose_corpus import leaves

WORDS = re.compile(r"\w+")
LEXICON = Lexicon()
HOSTILE = {
    "articles": "the ",
    "titles": "the Star ",
    "lists": "Star, XVII, 3w, ",
    "sentences": "Death. ",
    "items": "\n- Death",
    "ranks": "3 3 of ",
    "brackets": "[",
    "half links": "[a](",
    "backticks": "`",
    "mixed backticks": "`` ` ```x ",
    "fences": "```\n~~~\n",
    "angles": "<a",
    "blanks": "star" + " " * 70,
    "line ends": "star" + " \n" * 35,
    "stars": "*" * 70 + "Star",
    "quotes": "'" * 70 + "Death",
    "one word": "a",
}
SHORT, LONG = 60_000, 480_000
"""Characters of hostile text."""
LEAST = 0.002
"""Seconds; what takes less is taken for that much, since a clock tells little of it."""


def rows(_folder):
    """A long leaf, one of five megabytes, and the worst of what is made to be slow."""
    text = three_thousand_words()
    find(text, LEXICON)
    yield compared(
        "card names in 3,000 words / a bare scan for words",
        lambda: read_anew(text), lambda: WORDS.findall(text), 16, clock=process_time, rounds=60,
    )  # fmt: skip
    half, more = len(text) // 2, count()
    yield compared(
        "the same after each letter typed / a bare scan for words",
        lambda: find(f"{text[:half]}{'x' * next(more)} {text[half:]}", LEXICON),
        lambda: WORDS.findall(text), 4, clock=process_time, rounds=60,
    )  # fmt: skip
    whole = text * (5_000_000 // len(text) + 1)
    yield compared(
        "card names in five megabytes / a bare scan for words",
        lambda: find(whole, LEXICON), lambda: WORDS.findall(whole), 20,
        rounds=3, clock=process_time,
    )  # fmt: skip
    worst = max(HOSTILE, key=lambda name: grown(HOSTILE[name]))
    taken = tuple(grown(HOSTILE[worst]) for _ in range(ROUNDS))
    yield Row(f"text made to be slow, eight times as much ({worst}) / once", taken, 20)


def read_anew(text):
    """The names in a text, as when it is opened for the first time."""
    forget()
    find(text, LEXICON)


def grown(piece):
    """How many times longer the long text of a piece takes than the short one."""
    short, long = (piece * (size // len(piece)) for size in (SHORT, LONG))
    spent = took(lambda: find(short, LEXICON), 3)
    return took(lambda: find(long, LEXICON), 2) / max(spent, LEAST)


def took(work, times):
    """Least processor seconds of some runs; others on the machine matter little."""
    spent = []
    for _ in range(times):
        before = process_time()
        work()
        spent.append(process_time() - before)
    return min(spent)


def three_thousand_words():
    """Some of the invented diary."""
    text = "\n\n".join(leaf.text for leaf in leaves("diary.txt")) * 2
    return text[: [match.end() for match in WORDS.finditer(text)][2999]]
