"""What the handbook holds: a Markdown file of resources/handbook for each subject. Knows no Qt."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from binder.page import spotting
from binder.page.markup.markdown import plain
from binder.resources import resource

_WORD = re.compile(r"\w+")


@dataclass(frozen=True, slots=True)
class Subject:
    """One leaf: its number from 1, its title, the Markdown below that, and all its words."""

    number: int
    title: str
    text: str
    words: str


@cache
def subjects() -> tuple[Subject, ...]:
    """All leaves, in the order of their file names."""
    files = sorted(resource("handbook").glob("*.md"))
    return tuple(
        _subject(number, path.read_text(encoding="utf-8")) for number, path in enumerate(files, 1)
    )


def _subject(number: int, written: str) -> Subject:
    """The first line of a file is its title."""
    title, _, text = written.removeprefix("# ").partition("\n")
    return Subject(number, title, text.strip(), f"{title}\n{plain(text)}")


def having(words: str, among: Sequence[Subject]) -> list[Subject]:
    """Those that hold every one of some words, or their beginnings, inside whatever word."""
    wanted = words.split()
    return [one for one in among if all(spotting.count(one.words, [word]) for word in wanted)]


def marks(words: str, subject: Subject) -> tuple[str, ...]:
    """The whole words of a leaf in which what is sought stands."""
    wanted = words.split()
    return tuple(word for word in set(_WORD.findall(subject.words)) if spotting.count(word, wanted))
