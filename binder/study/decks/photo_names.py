"""Which card a photograph shows, told from the names of a folder's files; to be looked over."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePath

from binder.cards.titles import DeckTitles
from binder.cards.vocabulary import Vocabulary, vocabulary
from binder.cards.words import bare, fold

NO_CARD = "no card is named in this file's name"
BY_ORDER = "by its number in the folder"
MANY = "could be more than one card"

_CAMEL = re.compile(r"(?<=[a-zà-ÿ])(?=[A-ZÀ-Þ0-9])|(?<=[0-9])(?=[A-Z][a-z])")
_NUMBERED = re.compile(r"(?:[a-z]{0,6}\s*)?(\d{1,5})")
"""A number alone, or after a few letters as cameras and scanners name files."""


@dataclass(frozen=True, slots=True)
class Match:
    """A file and the card it was taken for; `key` '' where none. `note` says what to look at."""

    file: str
    key: str = ""
    note: str = ""

    @property
    def sure(self) -> bool:
        """Whether the name leaves no doubt."""
        return bool(self.key) and not self.note


def matched(files: Sequence[str], titles: DeckTitles) -> list[Match]:
    """Each file with its card, files in the order of their names; no card is given twice.

    The card is told by its title in this deck, by the trade's shorthand, by its key, or, when
    files carry only numbers, by where they stand in the row.
    """
    words = vocabulary(titles)
    ordered = sorted(files, key=_natural)
    found = _by_order(ordered, titles) or [_by_name(file, words) for file in ordered]
    return _once(found, titles)


def _natural(name: str) -> list[tuple[int, str]]:
    """Sorts 'card 10' after 'card 9'."""
    return [(int(p), "") if p.isdecimal() else (-1, p) for p in re.split(r"(\d+)", name.casefold())]


def _stem(file: str) -> str:
    return fold(_CAMEL.sub(" ", PurePath(file).stem))


def _by_name(file: str, words: Vocabulary) -> Match:
    key = PurePath(file).stem.casefold().replace("_", "-").replace(" ", "-")
    if key in words.deck.keys:
        return Match(file, key)
    found = filter(None, map(words.find, _readings(_stem(file))))
    keys = next(found, None)
    if not keys:
        return Match(file, "", NO_CARD)
    return Match(file, *keys) if len(keys) == 1 else Match(file, "", MANY)


def _readings(stem: str) -> Iterator[str]:
    """What the card's name may be: all of it, without a number before or after, then less."""
    yield stem
    parts = [part.lstrip("0") or "0" if part.isdecimal() else part for part in stem.split()]
    for first in range(len(parts)):
        for last in range(len(parts), first, -1):
            run = parts[first:last]
            if any(part.isalpha() for part in run):
                yield bare(" ".join(run))
            if len(run) == 2:  # 'coins 3'
                yield " ".join(reversed(run))


def _by_order(files: Sequence[str], titles: DeckTitles) -> list[Match]:
    """Files that carry only numbers: the Majors or the whole deck in its order; none if not so."""
    numbers = [number for number in map(_number, files) if number is not None]
    if len(set(numbers)) < len(files) or not files:
        return []
    majors = sorted(titles.keys[:22], key=titles.number)
    if len(files) < len(majors) and max(numbers) < len(majors):
        return []  # a few Majors by the numbers they bear
    keys = majors if len(files) == len(majors) else [*majors, *titles.keys[22:]]
    if len(files) == len(keys):
        places = list(range(len(files)))
    else:
        first = 0 if min(numbers) == 0 else 1
        places = [number - first for number in numbers]
    return [_placed(file, at, keys) for file, at in zip(files, places, strict=True)]


def _number(file: str) -> int | None:
    found = _NUMBERED.fullmatch(_stem(file))
    return int(found[1]) if found else None


def _placed(file: str, at: int, keys: Sequence[str]) -> Match:
    return Match(file, keys[at], BY_ORDER) if at < len(keys) else Match(file, "", NO_CARD)


def _once(found: Sequence[Match], titles: DeckTitles) -> list[Match]:
    """Of two files for one card the first keeps it, one named by a title before a mere number."""
    by_rank = sorted(found, key=lambda match: _stem(match.file).isdecimal())
    first = {match.key: match.file for match in reversed(by_rank)}
    return [
        match
        if not match.key or first[match.key] == match.file
        else replace(match, key="", note=f"there is another picture of {titles.title(match.key)}")
        for match in found
    ]


def still_bare(chosen: Mapping[str, str], titles: DeckTitles) -> list[str]:
    """Titles of the cards no file was chosen for; `chosen` is file -> key."""
    have = set(chosen.values())
    return [titles.title(key) for key in titles.keys if key not in have]
