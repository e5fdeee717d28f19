"""What a folder of readable text sources says, as plain values; no database, no dates reckoned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import ClassVar

from binder.study.kinds import LeafKind

VERDICTS = ("came about", "partly", "did not", "can't tell")
"""What a look back can say of an expectation; '' in a list of verdicts means still waiting."""

DRAWN = "drawn"
"""Stands for a photograph of the table that our own code draws: the cards as they lay."""

UNIT_STATES = ("done", "studying", "to come")
"""How far a unit of the course plan has come."""


@dataclass(frozen=True)
class ExpectText:
    """One expectation; `sure` is whole percent, 0 to 100."""

    text: str
    sure: int
    due: date


@dataclass(frozen=True)
class LookBackText:
    """One look back; `verdicts` in the order of the reading's expectations, '' = still waiting.

    `card` is the key of the card that had said it best, or ''; `text` may be '' beside verdicts.
    """

    at: datetime
    text: str
    verdicts: tuple[str, ...]
    card: str


@dataclass(frozen=True)
class ReadingText:
    """One reading; `cards` is shorthand in the titles of `deck`, `notes` goes by place number.

    `spread` and `deck` are keys, `significator` a card key or ''. `querent` is 'self' or initials.
    `purpose` is '' or 'month', 'week' or 'day', and then `period` is what the card was drawn for,
    as '2026-05', '2026-W49' or '2026-12-05'. `photographs` are names of pictures beside the leaf,
    or DRAWN; `shown` is '' for diagram and list, 'layout' or 'list'. `look_on` is the day to look
    back; None leaves it to the last due day, if there is one. `put_off` is how often it was asked
    for again later, and `let_go` whether it was let go.
    """

    kind_of_leaf: ClassVar[LeafKind] = LeafKind.READING
    at: date
    question: str
    spread: str
    deck: str
    cards: str
    significator: str
    notes: Mapping[int, str]
    topic: str
    querent: str
    purpose: str
    period: str
    mood: str
    venue: str
    on_screen: bool
    photographs: tuple[str, ...]
    shown: str
    look_on: date | None
    put_off: int
    let_go: bool
    expects: tuple[ExpectText, ...]
    look_backs: tuple[LookBackText, ...]


@dataclass(frozen=True)
class OwnWordsText:
    """The student's own meaning of a card as it stood from `at` on."""

    at: datetime
    upright: str
    reversed: str


@dataclass(frozen=True)
class SaysText:
    """What one source says of a card under one aspect; `locator` is a page, as '112' or '88-89'."""

    source: str
    aspect: str
    text: str
    locator: str


@dataclass(frozen=True)
class MarkText:
    """A spot on the picture and what is there; `x`, `y` 0 to 1 from the top left.

    `deck` is the key of the deck whose picture it is, '' for the drawn face.
    """

    x: float
    y: float
    text: str
    deck: str


@dataclass(frozen=True)
class PairText:
    """Another card (its key) that is seen together with this one, and why."""

    card: str
    text: str


@dataclass(frozen=True)
class CardText:
    """What is written on a card leaf besides its body; own words oldest first.

    `fields` go by the names of `binder.study.leaves.fields`.
    """

    kind_of_leaf: ClassVar[LeafKind] = LeafKind.CARD
    card: str
    own_words: tuple[OwnWordsText, ...]
    says: tuple[SaysText, ...]
    fields: Mapping[str, str]
    marks: tuple[MarkText, ...]
    pairs: tuple[PairText, ...]


@dataclass(frozen=True)
class UnitText:
    """One unit of the course plan; `cards` and `studied` are card keys, `ends` may be planned.

    `aims` is what the unit is for, in a sentence or two.
    """

    kind_of_leaf: ClassVar[LeafKind] = LeafKind.PLAIN
    number: int
    cards: tuple[str, ...]
    starts: date
    ends: date
    state: str
    aims: str
    studied: tuple[str, ...]


@dataclass(frozen=True)
class SourceText:
    """One book of the bibliography; `csl` is a CSL-JSON item, its `id` equal to `key`."""

    kind_of_leaf: ClassVar[LeafKind] = LeafKind.SOURCE
    key: str
    csl: Mapping[str, object]


@dataclass(frozen=True)
class BesideText:
    """A note beside a page of a handout, from 1."""

    page: int
    text: str


@dataclass(frozen=True)
class HandoutText:
    """A handout our own code draws: `kind` picks the drawing, `words` is the text in it.

    `file` is the name it is kept under ('suit-wheel.png'); its body links to it as `file:NAME`.
    `printed` is when it was ticked off as printed and filed on paper, or None.
    """

    kind_of_leaf: ClassVar[LeafKind] = LeafKind.HANDOUT
    kind: str
    file: str
    words: Mapping[str, object]
    printed: datetime | None = None
    beside: tuple[BesideText, ...] = ()


Holds = ReadingText | CardText | UnitText | SourceText | HandoutText | None
"""What a leaf holds besides Markdown; None for a plain leaf."""


@dataclass(frozen=True)
class LeafText:
    """One leaf; `name` is 'binder/tab/file' without '.md', which leaf: links in bodies use."""

    name: str
    title: str
    at: date
    body: str
    holds: Holds

    @property
    def kind(self) -> LeafKind:
        """The kind of leaf it is built as."""
        return self.holds.kind_of_leaf if self.holds else LeafKind.PLAIN


@dataclass(frozen=True)
class TabText:
    """One tab, its leaves in order; `colour` is a name of the palette, as 'tabRead'."""

    folder: str
    name: str
    kind: str
    colour: str
    leaves: tuple[LeafText, ...]


@dataclass(frozen=True)
class CourseText:
    """What a binder says of its course; `days_off` are weekdays from 0 for Monday.

    `pauses` are first and last days, `read` the keys of cards whose leaf was read.
    """

    days_off: frozenset[int]
    pauses: tuple[tuple[date, date], ...]
    read: tuple[str, ...]


@dataclass(frozen=True)
class BinderText:
    """One binder, its tabs in order; `colour` is a name of the palette, as 'spineF'.

    `draws` are those that slips offer for its log: month, week, day.
    """

    folder: str
    name: str
    colour: str
    tabs: tuple[TabText, ...]
    draws: tuple[str, ...]
    course: CourseText


@dataclass(frozen=True)
class DeckText:
    """One deck; `titles` is what `DeckTitles.from_dict` takes."""

    key: str
    name: str
    about: str
    titles: Mapping[str, object]


@dataclass(frozen=True)
class ShelfText:
    """A whole shelf as its text sources say it, binders in order."""

    name: str
    decks: tuple[DeckText, ...]
    binders: tuple[BinderText, ...]
