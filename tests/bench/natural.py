"""Words as often as in natural text: 50,000 different ones, the commonest in every line and most of
them seldom, by the law of Zipf as Mandelbrot put it (An informational theory of the statistical
structure of language, 1953): the word of rank r comes as 1 / (r + 2.7) ** 1.07, roughly what
English text shows.

The commonest are English; a student's own words come in a diary every few pages; the rest is made
of syllables, and no two are alike.
"""

import random
from functools import cache
from itertools import accumulate, islice

DIFFERENT = 50_000
COMMON = """
the of and to a in that it is was I he for with as his on be at by she had not are but
from have an they which one you were all her would there their we him been has when who
will no more if out so up said what its about than into them can only other time new some
could these two may first then do any like my now over such our man me even most made
after also did many before must through back years where much your way well down should
because each just those people too how little good very make world still own see men work
long here get both between life being under never day same another know while last might
us great old year off come since against go came right used take three
""".split()  # noqa: SIM905
OWN = (
    "kiln", "quay", "ferry", "glaze", "clay", "bench", "lantern", "harbour", "letter", "winter",
    "morning", "answer", "question", "river", "stair", "window", "garden", "market", "bread",
    "table", "candle", "shelf", "binder", "patience", "stranger", "kettle", "wheel", "basket",
    "shore", "lamp", "mirror", "bridge", "orchard", "cellar", "anchor", "thread", "copper",
    "slate", "willow",
)  # fmt: skip
_STARTS = ("b", "br", "c", "cl", "d", "dr", "f", "fl", "g", "gr", "h", "l", "m", "n", "p", "pl",
           "r", "s", "sh", "st", "t", "tr", "v", "w")  # fmt: skip
_HEARTS = ("a", "e", "i", "o", "u", "ai", "ea", "oo", "ou")
_ENDS = ("", "n", "r", "s", "t", "l", "m", "ck", "nd", "st")


@cache
def vocabulary() -> tuple[str, ...]:
    """All words, the commonest first."""
    known = {*COMMON, *OWN}
    made = islice((word for word in _made() if word not in known), DIFFERENT - len(known))
    words = [*COMMON, *made]
    for number, word in enumerate(OWN):
        words.insert(len(COMMON) + number * 12, word)
    return tuple(words)


def _made():
    """Words of two or three syllables, each once."""
    chance, seen = random.Random(1953), set()
    while True:
        word = "".join(
            chance.choice(_STARTS) + chance.choice(_HEARTS) + chance.choice(_ENDS)
            for _ in range(chance.choice((2, 2, 3)))
        )
        if word not in seen:
            seen.add(word)
            yield word


@cache
def _shares() -> tuple[float, ...]:
    """How often each word comes, added up."""
    return tuple(accumulate((rank + 2.7) ** -1.07 for rank in range(1, DIFFERENT + 1)))


def words(chance: random.Random, count: int) -> list[str]:
    """So many words drawn by their frequency."""
    return chance.choices(vocabulary(), cum_weights=_shares(), k=count)
