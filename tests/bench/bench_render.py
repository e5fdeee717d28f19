"""A leaf of 3,000 words rendered, against the bare markdown package and nh3 on the same text."""

import random

import nh3
from markdown import Markdown
from measuring import Row, ratios, turns

from binder.cards.prose import Lexicon, find
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html

WORDS = (
    "she turned over one card and thought for some time about what it could mean in this place"
    " since the question asked was not quite plain yet the colours on the table said more"
)
NAMES = ("The Star", "the Tower", "Six of Swords", "Queen of Cups", "The Hermit", "Strength")
ROUNDS = 15


def leaf(words: int, seed: int = 3) -> str:
    """Some invented writing with lists, tables, quotes, footnotes, emphasis and card names."""
    chance = random.Random(seed)
    parts: list[str] = []
    number = 0
    while sum(len(part.split()) for part in parts) < words:
        number += 1
        parts += [f"## Day {number}", _said(chance, 60), _said(chance, 60)]
        parts.append("\n".join(f"- {_said(chance, 9)}" for _ in range(4)))
        if number % 3 == 0:
            rows = "\n".join(f"| {n} | {chance.choice(NAMES)} |" for n in range(1, 5))
            parts.append(f"| Place | Card |\n|------:|------|\n{rows}")
        if number % 4 == 0:
            parts += [f"> {_said(chance, 30)}", f"A note[^{number}].\n\n[^{number}]: So it was."]
    return "\n\n".join(parts)


def _said(chance: random.Random, count: int) -> str:
    words = [chance.choice(WORDS.split()) for _ in range(count)]
    words[chance.randrange(count)] = chance.choice(NAMES)
    for mark in ("*", "**"):
        at = chance.randrange(count)
        words[at] = f"{mark}{words[at]}{mark}"
    return " ".join(words) + "."


def rows(folder):
    """Rendering, rendering with names found, and the tree for print, each over the bare pair."""
    text = leaf(3_000)
    bare = Markdown(extensions=["tables", "footnotes", "sane_lists", "fenced_code"])
    lexicon = Lexicon()
    works = {
        "bare": lambda: nh3.clean(bare.reset().convert(text)),
        "leaf of 3,000 words to clean HTML / bare package and nh3": lambda: to_html(text),
        "the same with card names found and linked / bare": lambda: to_html(
            text, link_cards=lambda words: find(words, lexicon)
        ),
        "leaf of 3,000 words to clean HTML and the tree for print / bare": lambda: blocks(
            to_html(text)
        ),
    }
    taken = turns(works, ROUNDS)
    bare = taken.pop("bare")
    for (name, times), bound in zip(taken.items(), (1.6, None, None), strict=True):
        yield Row(name, ratios(times, bare), bound)
