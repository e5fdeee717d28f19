"""What many sources say of a card, side by side, and the sources themselves.

A cell's `place` holds the order of columns and rows in one number: before the point that of its
source, behind it, in steps of ROW, that of its aspect. Cells of a file whose places are whole
numbers stand in the order in which they were written.
"""

from __future__ import annotations

import itertools
import json
import unicodedata
from collections.abc import Callable, Container, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from binder.errors import CanMend
from binder.page.address import Scheme, leads_to
from binder.store.change import Change
from binder.store.file import Binder
from binder.store.kept_json import mapping
from binder.store.parts import leaf_row, parts
from binder.store.schema import Leaf, Source, SourceNote
from binder.store.shelf import Shelf
from binder.study.kinds import SOURCES, LeafKind
from binder.study.leaves.leaves import add_leaf
from binder.study.leaves.tabs import TabView, first_of_kind, tabs

OWN = ""
"""Stands for a source in the lines that are the reader's own."""
AGREE, DIFFER = "They agree", "They differ"
"""Aspects of the reader's own lines below a table."""
USUAL = ("Upright", "Reversed", "Imagery")
"""Aspects that are offered before the user adds others."""
ROW = 1 / 1024


@dataclass(frozen=True, slots=True)
class SourceView:
    """A source: its citation key and CSL fields; `leaf_uid` is where its leaf is kept."""

    leaf_uid: str
    key: str
    title: str
    fields: dict[str, Any]

    @property
    def author(self) -> str:
        """The authors' names, given name first; the key when there are none."""
        names = map(person_name, self.fields.get("author", []))
        return " and ".join(filter(None, names)) or self.key


def person_name(person: Mapping[str, object]) -> str:
    """A person's name as CSL keeps it, given name first; '' where nothing is said.

    What a foreign file has in the place of a word, as a number or a truth value, is no word.
    """
    given, family, literal = (person.get(key) for key in ("given", "family", "literal"))
    said = " ".join(part for part in (given, family) if isinstance(part, str) and part)
    return said or (literal if isinstance(literal, str) else "")


def person(name: str) -> dict[str, str]:
    """'Lisle, Perpetua' or 'Perpetua Lisle' as CSL keeps it; a single word is taken as it is."""
    family, comma, given = (part.strip() for part in name.partition(","))
    if comma:
        return {"family": family, "given": given} if given else {"literal": family}
    given, _, family = name.rpartition(" ")
    return {"family": family, "given": given} if given else {"literal": name}


@dataclass(frozen=True, slots=True)
class NoteView:
    """One cell of the side by side table; `place` is explained at the head of this module."""

    uid: str
    source: str
    aspect: str
    text: str
    locator: str
    place: float = 0.0


@dataclass(frozen=True, slots=True)
class SideBySide:
    """The table of a card: sources are columns, aspects rows, cells by (source key, aspect).

    `own` is what the reader wrote below it, by AGREE and DIFFER, as far as there is any.
    """

    sources: tuple[SourceView, ...]
    aspects: tuple[str, ...]
    cells: dict[tuple[str, str], NoteView] = field(default_factory=dict)
    own: dict[str, str] = field(default_factory=dict)


def sources(shelf: Shelf) -> dict[str, SourceView]:
    """All sources of the shelf by citation key."""
    query = (
        Source.select(Leaf.uid, Source.key, Leaf.title, Source.fields)
        .join(Leaf)
        .where(Leaf.aside.is_null())
        .tuples()
    )
    return {
        row[1]: SourceView(row[0], row[1], row[2], mapping(row[3])) for _, row in shelf.each(query)
    }


def author_of(shelf: Shelf, address: str) -> str:
    """Who wrote what a link 'source:KEY#PLACE' leads to; '' where nobody is named."""
    found = sources(shelf).get(leads_to(address, Scheme.SOURCE))
    return found.author if found and found.fields.get("author") else ""


def source_of(binder: Binder, leaf_uid: str) -> SourceView | None:
    """The source whose leaf that is, or None while its bibliography is not written yet."""
    query = (
        Source.select(Leaf.uid, Source.key, Leaf.title, Source.fields)
        .join(Leaf)
        .where(Leaf.uid == leaf_uid)
        .tuples()
    )
    for uid, key, title, fields in binder.all(query):
        return SourceView(uid, key, title, mapping(fields))
    return None


def set_source(binder: Binder, leaf_uid: str, key: str, fields: dict[str, Any]) -> None:
    """Write the bibliographic facts of a source leaf."""
    if not key.strip():
        raise CanMend("A source needs a short key to cite it by.")
    leaf = leaf_row(binder, leaf_uid)
    row = binder.first(Source.select().where(Source.leaf == leaf))
    written = {"key": key.strip(), "fields": json.dumps(fields, ensure_ascii=False)}
    with binder.change("Write source") as change:
        if row is None:
            change.add(Source, leaf=leaf, **written)
        else:
            change.edit(Source, row.uid, **written)


def side_by_side(
    binder: Binder, leaf_uid: str, known: dict[str, SourceView], *, empty: bool = False
) -> SideBySide:
    """The table of the card leaf; sources that are not on the shelf show their key.

    Rows and columns in which nothing is written yet stand in it with `empty`.
    """
    said = notes(binder, leaf_uid)
    cells = [cell for cell in said if cell.source != OWN and (empty or cell.text)]
    written = {cell.aspect: cell.text for cell in said if cell.source == OWN}
    return SideBySide(
        tuple(known.get(key, SourceView("", key, "", {})) for key in in_order(cells, _column)),
        tuple(in_order(cells, _row)),
        {(cell.source, cell.aspect): cell for cell in cells},
        {name: written[name] for name in (AGREE, DIFFER) if name in written},
    )


def notes(binder: Binder, leaf_uid: str) -> list[NoteView]:
    """The cells of a card's table, column by column, the reader's own first."""
    return [
        NoteView(row.uid, row.source, row.aspect, row.text, row.locator, row.place)
        for row in parts(binder, SourceNote, leaf_uid, "t.place, t.id")
    ]


def _column(cell: NoteView) -> tuple[str, float]:
    return cell.source, float(int(cell.place))


def _row(cell: NoteView) -> tuple[str, float]:
    return cell.aspect, cell.place % 1


def in_order(
    cells: Iterable[NoteView], told: Callable[[NoteView], tuple[str, float]] = _row
) -> dict[str, float]:
    """Names of columns or rows, with the place of each; `told` gives a cell's name and place."""
    first: dict[str, float] = {}
    for name, place in map(told, cells):
        first[name] = min(place, first.get(name, place))
    return dict(sorted(first.items(), key=lambda item: item[1]))


def note(
    binder: Binder, leaf_uid: str, source: str, aspect: str, text: str, locator: str = ""
) -> str:
    """Write one cell of a card's table; an empty text clears it. Returns its uid, '' for none.

    The last cell of a row or a column stays when it is cleared, so that the row stays too.
    """
    leaf = _card_leaf(binder, leaf_uid)
    aspect, text, locator = " ".join(aspect.split()), text.strip(), locator.strip()
    if not aspect:
        raise CanMend("Say under which aspect it stands, as Upright or Imagery.")
    said = notes(binder, leaf_uid)
    before = next((one for one in said if (one.source, one.aspect) == (source, aspect)), None)
    with binder.change("Write what a source says") as change:
        if before is not None and not text:
            if _last(said, before):
                change.edit(SourceNote, before.uid, text="", locator="")
            else:
                change.remove(SourceNote, before.uid)
        elif before is not None:
            change.edit(SourceNote, before.uid, text=text, locator=locator)
            return before.uid
        elif text:
            return _add_cell(change, leaf, said, source, aspect, text, locator)
    return ""


def _card_leaf(binder: Binder, uid: str) -> Leaf:
    leaf: Leaf | None = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == uid))
    if leaf is None:
        raise CanMend("That card leaf is no longer in this binder.")
    return leaf


def _add_cell(
    change: Change, leaf: Leaf, said: list[NoteView], source: str, aspect: str,
    text: str = "", locator: str = "",
) -> str:  # fmt: skip
    return change.add(
        SourceNote, leaf=leaf.id, card=leaf.card, source=source, aspect=aspect, text=text,
        locator=locator, place=_place(said, source, aspect),
    )  # fmt: skip


def _last(said: list[NoteView], cell: NoteView) -> bool:
    """Whether a row or a column goes with a cell."""
    if cell.source == OWN:
        return False
    others = [one for one in said if one.source != OWN and one.uid != cell.uid]
    row = any(one.aspect == cell.aspect for one in others)
    return not row or not any(one.source == cell.source for one in others)


def begin(binder: Binder, leaf_uid: str, cells: Sequence[tuple[str, str]], label: str) -> None:
    """Let rows and columns stand in a card's table before anything is written there.

    `cells` are (source, aspect); those that are written on stay as they are.
    """
    leaf = _card_leaf(binder, leaf_uid)
    with binder.change(label) as change:
        for source, aspect in cells:
            said = notes(binder, leaf_uid)
            if any((one.source, one.aspect) == (source, aspect) for one in said):
                continue
            _add_cell(change, leaf, said, source, aspect)


def _place(said: list[NoteView], source: str, aspect: str) -> float:
    """Where a new cell stands: with its source and its aspect, or behind all others."""
    if source == OWN:
        return 0.0
    cells = [cell for cell in said if cell.source != OWN]
    columns, rows = in_order(cells, _column), in_order(cells, _row)
    column = columns.get(source, max(columns.values(), default=0.0) + 1)
    return column + rows.get(aspect, max(rows.values(), default=-ROW) + ROW)


def home(shelf: Shelf) -> tuple[Binder, TabView]:
    """The binder and tab in which leaves of new sources are made; CanMend where there is none."""
    for binder in shelf.binders:
        tab = first_of_kind(binder, SOURCES)
        if tab is not None:
            return binder, tab
    raise CanMend("No binder here has a tab for sources; add a tab of that kind first.")


def homes(shelf: Shelf, beside: Binder | None) -> list[tuple[Binder, TabView]]:
    """Where a new source may go: tabs for sources, then the other tabs of the binder `beside`."""
    standing = [(binder, tab) for binder in shelf.binders for tab in tabs(binder)]
    meant = [(binder, tab) for binder, tab in standing if tab.kind.key == SOURCES]
    other = [
        (binder, tab)
        for binder, tab in standing
        if binder is beside and tab.kind.leaf is LeafKind.PLAIN
    ]
    return [*meant, *other]


def new_source(
    shelf: Shelf, author: str, title: str, where: tuple[Binder, TabView] | None = None
) -> SourceView:
    """Make a source leaf behind the tab `where`, else the first Sources tab of the shelf, with a
    key after its author.
    """
    named, called = " ".join(author.split()), " ".join(title.split())
    if not called:
        raise CanMend("A source needs a title.")
    binder, tab = where or home(shelf)
    who = person(named)
    fields: dict[str, Any] = {"type": "book", "title": called}
    if named:
        fields["author"] = [who]
    key = free_key(who.get("family") or named or called, sources(shelf))
    with binder.change(f"New source “{called}”"):
        uid = add_leaf(binder, tab, called, kind=LeafKind.SOURCE)
        set_source(binder, uid, key, fields)
    return SourceView(uid, key, called, fields)


def free_key(words: str, taken: Container[str]) -> str:
    """A short key of plain letters that no source has yet."""
    plain = unicodedata.normalize("NFKD", words.casefold())
    stem = "".join(letter for letter in plain if letter.isascii() and letter.isalnum())[:24]
    stem = stem or "source"
    tries = (f"{stem}{number}" for number in itertools.count(2))
    return stem if stem not in taken else next(key for key in tries if key not in taken)
