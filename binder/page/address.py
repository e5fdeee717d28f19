"""Addresses: where a link on a leaf leads, as 'card:major-09' or 'source:lisle-2019#p40'."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Scheme(StrEnum):
    """What an address leads to; its words stand before the colon."""

    CARD = "card"
    LEAF = "leaf"
    FACING = "facing"
    SOURCE = "source"
    FILE = "file"
    TICK = "tick"
    HTTP = "http"
    HTTPS = "https"
    MAILTO = "mailto"
    # What only the program's own leaves offer.
    YEAR = "year"
    PRINT_YEAR = "print-year"
    CAME = "came"
    SURE = "sure"
    MONTH = "month"
    DRAWS = "draws"
    LOOK_BACK = "look"
    LEVEL = "level"
    ACROSS = "across"
    SOURCES = "sources"
    MARKS = "marks"
    PAIR = "pair"
    DECKS = "decks"
    BEGIN = "begin"

    @property
    def prefix(self) -> str:
        """The beginning of every such address: 'leaf:'."""
        return f"{self}:"

    def to(self, rest: object) -> str:
        """The address, as it is written, of what `rest` names: a key, a uid, a number."""
        return f"{self}:{rest}"


WRITTEN = (Scheme.CARD, Scheme.LEAF, Scheme.SOURCE, Scheme.FILE)
"""What somebody may link to on a leaf, besides the web; the others the program writes itself."""
WEB = (Scheme.HTTP, Scheme.HTTPS, Scheme.MAILTO)
"""What leads out of the program."""


@dataclass(frozen=True, slots=True)
class Address:
    """One address taken apart; `str` puts it together again, letter for letter.

    `rest` is all that follows the colon: the key of a card, the uid of a leaf or kept file, the
    number of a tick box, key and place of a source.
    """

    scheme: Scheme
    rest: str

    @classmethod
    def parse(cls, written: str) -> Address | None:
        """The address written so, whatever the case of its scheme; None for any other words."""
        name, colon, rest = written.partition(":")
        scheme = _SCHEMES.get(name.lower()) if colon else None
        if scheme is None or (scheme is Scheme.TICK and not _counts(rest)):
            return None
        return cls(scheme, rest)

    @classmethod
    def source(cls, key: str, place: str = "") -> Address:
        """The address of a source, or of a place in it: 'p112'."""
        return cls(Scheme.SOURCE, f"{key}#{place}" if place else key)

    @property
    def key(self) -> str:
        """What it leads to, without the place in it."""
        return self.rest.partition("#")[0] if self.scheme is Scheme.SOURCE else self.rest

    @property
    def place(self) -> str:
        """The place in a source, as 'p112'; '' for none."""
        return self.rest.partition("#")[2] if self.scheme is Scheme.SOURCE else ""

    @property
    def number(self) -> int:
        """Which tick box of the leaf it is, from 0."""
        return int(self.rest)

    def __str__(self) -> str:
        return self.scheme.to(self.rest)


_SCHEMES = {scheme.value: scheme for scheme in Scheme}


def _counts(words: str) -> bool:
    return words.isascii() and words.isdigit()


def leads_to(written: str, scheme: Scheme) -> str:
    """Key, uid or number in an address of that scheme; '' for any other address."""
    address = Address.parse(written)
    return address.key if address and address.scheme is scheme else ""
