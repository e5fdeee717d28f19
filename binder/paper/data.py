"""What a printed tab says, as plain data that knows neither the database nor the paper.

Whoever prints fills a `Section`; `typeset` turns it into pages. All words here are plain text,
except BLOCKS: the tree described at the top of `binder.page.markup.blocks`. Dates come ready
to read.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from typing import Any

Blocks = tuple[Mapping[str, Any], ...] | list[dict[str, Any]]
"""A list of blocks, as `binder.page.markup.blocks.blocks` gives it."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A file of the binder: a picture, or a PDF, of which every page is printed in order."""

    data: bytes = field(repr=False)
    media_type: str
    name: str = ""


@dataclass(frozen=True, slots=True)
class Photograph:
    """The owner's photograph of a card, and the drawn face that stands in for a broken one."""

    data: bytes = field(repr=False)
    drawn: str = field(repr=False)


@dataclass(frozen=True, slots=True)
class Part:
    """One portion of a leaf under its own heading ('' for none); `own` marks the student's words,
    which are printed in blue-black."""

    heading: str
    blocks: Blocks
    own: bool = False


@dataclass(frozen=True, slots=True)
class PlacedCard:
    """One card of a layout, for the list beside it: place 1 from the first, its label, the card's
    title in the deck it came from, and the student's note on it, if any; `beside` for a card laid
    to clarify the first of its place. `key` is the card's, `named` those of cards in the note."""

    n: int
    label: str
    card: str
    reversed: bool = False
    note: str = ""
    beside: bool = False
    key: str = ""
    named: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PrintExpectation:
    """What the student expects: `sure` in percent, `due` as a short date ('20 Dec'), `verdict` ''
    while it is open, else 'came about', 'partly', 'did not' or "can't tell"; `named` are the keys
    of cards in the text."""

    text: str
    sure: int
    due: str
    verdict: str = ""
    named: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PrintLookBack:
    """What the student wrote on looking back, and when; `named` are the keys of cards in that."""

    when: str
    blocks: Blocks
    named: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SideBySide:
    """What each source says: `sources` are (author, work), one a column; `rows` are (aspect,
    cells), with one cell a source, '' where it says nothing. `keys` are the sources' keys, `own`
    what the student says of them all: (name, words)."""

    sources: tuple[tuple[str, str], ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]
    keys: tuple[str, ...] = ()
    own: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class TurnedUp:
    """One reading a card turned up in; `verdict` is a mark as of an expectation, or 'mixed', or
    'waiting', or ''; `ended` says it in words."""

    day: str
    title: str
    place: str
    verdict: str = ""
    ended: str = ""


@dataclass(frozen=True, slots=True)
class PrintFace:
    """One picture of a card: the name of its deck, and the face as SVG."""

    name: str
    svg: str


@dataclass(frozen=True, slots=True)
class PrintBeside:
    """A note beside page `page`, from 1, of the handout with uid `file`."""

    file: str
    page: int
    blocks: Blocks


@dataclass(frozen=True, slots=True)
class PrintLeaf:
    """One leaf. `kind` is 'reading', 'card', 'source', 'handout' or 'plain'.

    `over` and `under` are the lines above and below the title. `day` ('22 Nov') and `listed` (the
    title, where that is '') stand in the contents. `svg` is the layout when there are `placed`
    cards, else the face of the card: its viewBox counts 100 units to the width of one card.
    Where several pictures of a card are shown, `faces` are all of them, `svg` the first.
    `facts` are (label, value). `turned_up_note` says how often, as 'seven times in 61 readings'.
    `handouts` are uids of pictures printed one a page behind the leaf, `beside` the notes that
    stand under single pages of them. `drawn` are the keys of the cards in the layout, `named`
    those of cards in the lines about the title. `caution` is what a reading
    carries; one that is `urgent` stands before everything else. `unwritten` marks the leaf
    of a card of which nothing is said yet: it is printed with lines to write on.
    """

    uid: str
    kind: str
    title: str
    over: str = ""
    under: str = ""
    day: str = ""
    listed: str = ""
    svg: str | None = None
    faces: tuple[PrintFace, ...] = ()
    placed: tuple[PlacedCard, ...] = ()
    parts: tuple[Part, ...] = ()
    expectations: tuple[PrintExpectation, ...] = ()
    look_backs: tuple[PrintLookBack, ...] = ()
    facts: tuple[tuple[str, str], ...] = ()
    side_by_side: SideBySide | None = None
    turned_up: tuple[TurnedUp, ...] = ()
    turned_up_note: str = ""
    handouts: tuple[str, ...] = ()
    beside: tuple[PrintBeside, ...] = ()
    drawn: tuple[str, ...] = ()
    named: tuple[str, ...] = ()
    caution: str = ""
    urgent: bool = False
    unwritten: bool = False


@dataclass(frozen=True, slots=True)
class Section:
    """One tab to be printed. `tab_place` is (which, of how many), counted from the top.

    `subtitle` lines stand under the tab's name on the divider sheet, `notes` at its foot; `order`
    says how the leaves follow each other ('Readings log, newest first'). `card_index` are the
    cards by (key, title) in the order of the deck, where an index of them is to be printed: those
    that are found on the pages get a line. `pictures` holds the files that blocks and handouts ask
    for, by uid; `photographs` those that drawings of cards ask for, by name of file;
    `bibliography` the CSL fields of the sources that are cited, by key.
    """

    binder: str
    tab: str
    tab_place: tuple[int, int] = (1, 1)
    subtitle: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    order: str = ""
    leaves: tuple[PrintLeaf, ...] = ()
    card_index: tuple[tuple[str, str], ...] = ()
    pictures: Mapping[str, Picture] = field(default_factory=dict, repr=False)
    photographs: Mapping[str, Photograph] = field(default_factory=dict, repr=False)
    bibliography: Mapping[str, Mapping[str, Any]] = field(default_factory=dict, repr=False)


_APART = ("pictures", "photographs", "bibliography")


def plain(thing: Any) -> dict[str, Any]:
    """A dataclass of this module as a dictionary of its fields; pictures, photographs and
    bibliography, which stand in files of their own, left out.

    Fit for `json.dumps(..., default=plain)`, which goes on into what the fields hold.
    """
    return {
        part.name: getattr(thing, part.name) for part in fields(thing) if part.name not in _APART
    }
