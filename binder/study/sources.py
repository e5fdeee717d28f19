"""What many sources say of a card, side by side, and the sources themselves."""

from __future__ import annotations

import itertools
import json
import unicodedata
from collections.abc import Container
from dataclasses import dataclass, field
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.parts import parts
from binder.store.schema import Leaf, Source, SourceNote
from binder.store.shelf import Shelf
from binder.study.kinds import LeafKind
from binder.study.leaves import add_leaf
from binder.study.tabs import first_of_kind


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
        names = [
            " ".join(part for part in (name.get("given", ""), name.get("family", "")) if part)
            or name.get("literal", "")
            for name in self.fields.get("author", [])
        ]
        return " and ".join(name for name in names if name) or self.key


@dataclass(frozen=True, slots=True)
class NoteView:
    """One cell of the side by side table."""

    uid: str
    source: str
    aspect: str
    text: str
    locator: str


@dataclass(frozen=True, slots=True)
class SideBySide:
    """The table of a card: sources are columns, aspects rows, cells by (source key, aspect)."""

    sources: tuple[SourceView, ...]
    aspects: tuple[str, ...]
    cells: dict[tuple[str, str], NoteView] = field(default_factory=dict)


def sources(shelf: Shelf) -> dict[str, SourceView]:
    """All sources of the shelf by citation key."""
    query = (
        Source.select(Leaf.uid, Source.key, Leaf.title, Source.fields)
        .join(Leaf)
        .where(Leaf.aside.is_null())
        .tuples()
    )
    return {
        row[1]: SourceView(row[0], row[1], row[2], json.loads(row[3]))
        for _, row in shelf.each(query)
    }


def source_of(binder: Binder, leaf_uid: str) -> SourceView | None:
    """The source whose leaf that is, or None while its bibliography is not written yet."""
    query = (
        Source.select(Leaf.uid, Source.key, Leaf.title, Source.fields)
        .join(Leaf)
        .where(Leaf.uid == leaf_uid)
        .tuples()
    )
    for uid, key, title, fields in binder.all(query):
        return SourceView(uid, key, title, json.loads(fields))
    return None


def set_source(binder: Binder, leaf_uid: str, key: str, fields: dict[str, Any]) -> None:
    """Write the bibliographic facts of a source leaf."""
    if not key.strip():
        raise CanMend("A source needs a short key to cite it by.")
    leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == leaf_uid))
    row = binder.first(Source.select().where(Source.leaf == leaf))
    written = {"key": key.strip(), "fields": json.dumps(fields, ensure_ascii=False)}
    with binder.change("Write source") as change:
        if row is None:
            change.add(Source, leaf=leaf, **written)
        else:
            change.edit(Source, row.uid, **written)


def side_by_side(binder: Binder, leaf_uid: str, known: dict[str, SourceView]) -> SideBySide:
    """The table of the card leaf; sources that are not on the shelf show their key."""
    said = notes(binder, leaf_uid)
    keys = dict.fromkeys(cell.source for cell in said)
    return SideBySide(
        tuple(known.get(key, SourceView("", key, "", {})) for key in keys),
        tuple(dict.fromkeys(cell.aspect for cell in said)),
        {(cell.source, cell.aspect): cell for cell in said},
    )


def notes(binder: Binder, leaf_uid: str) -> list[NoteView]:
    """The cells of a card's table, in the order they were written."""
    return [
        NoteView(row.uid, row.source, row.aspect, row.text, row.locator)
        for row in parts(binder, SourceNote, leaf_uid, "t.place, t.id")
    ]


def note(
    binder: Binder, leaf_uid: str, source: str, aspect: str, text: str, locator: str = ""
) -> str:
    """Write one cell of a card's table; an empty text clears it. Returns its uid, '' for none."""
    leaf = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == leaf_uid))
    if leaf is None:
        raise CanMend("That card leaf is no longer in this binder.")
    of = (SourceNote.leaf == leaf.id) & (SourceNote.source == source)
    row = binder.first(SourceNote.select().where(of & (SourceNote.aspect == aspect)))
    last = binder.value(SourceNote.select(fn.MAX(SourceNote.place)))
    with binder.change("Write what a source says") as change:
        if row is not None and not text.strip():
            change.remove(SourceNote, row.uid)
        elif row is not None:
            change.edit(SourceNote, row.uid, text=text.strip(), locator=locator)
            return str(row.uid)
        elif text.strip():
            return change.add(
                SourceNote, leaf=leaf.id, card=leaf.card, source=source, aspect=aspect,
                text=text.strip(), locator=locator, place=(last or 0.0) + 1,
            )  # fmt: skip
    return ""


def change_note(
    binder: Binder, uid: str, *, source: str, aspect: str, text: str, locator: str
) -> None:
    """Put right any part of one cell; it may go to another source or aspect that is still free."""
    row = binder.first(SourceNote.select().where(SourceNote.uid == uid))
    if row is None:
        raise CanMend("What you were changing is no longer there; it was removed elsewhere.")
    aspect = " ".join(aspect.split())
    if not aspect or not text.strip():
        raise CanMend("Say under which aspect, and what the source says there.")
    same = (SourceNote.leaf == row.leaf_id) & (SourceNote.source == source)
    taken = SourceNote.select(SourceNote.uid).where(same & (SourceNote.aspect == aspect))
    if binder.value(taken.where(SourceNote.uid != uid)):
        raise CanMend(f"This source has a line under “{aspect}” already; choose another aspect.")
    with binder.change("Write what a source says") as change:
        change.edit(
            SourceNote,
            uid,
            source=source,
            aspect=aspect,
            text=text.strip(),
            locator=locator.strip(),
        )


def remove_note(binder: Binder, uid: str) -> None:
    """Take one cell out of a card's table."""
    with binder.change("Remove what a source says") as change:
        change.remove(SourceNote, uid)


def new_source(shelf: Shelf, author: str, title: str) -> SourceView:
    """Make a source leaf in the first Sources tab of the shelf, with a key after its author."""
    named, called = " ".join(author.split()), " ".join(title.split())
    if not called:
        raise CanMend("A source needs a title.")
    home = next(((b, tab) for b in shelf.binders if (tab := first_of_kind(b, "sources"))), None)
    if home is None:
        raise CanMend("No binder here has a tab for sources; add a tab of that kind first.")
    binder, tab = home
    given, _, family = named.rpartition(" ")
    fields: dict[str, Any] = {"type": "book", "title": called}
    if named:
        fields["author"] = [{"family": family, "given": given} if given else {"literal": named}]
    key = _free_key(family or called, sources(shelf))
    with binder.change(f"New source “{called}”"):
        uid = add_leaf(binder, tab, called, kind=LeafKind.SOURCE)
        set_source(binder, uid, key, fields)
    return SourceView(uid, key, called, fields)


def _free_key(words: str, taken: Container[str]) -> str:
    """A short key of plain letters that no source has yet."""
    plain = unicodedata.normalize("NFKD", words.casefold())
    stem = "".join(letter for letter in plain if letter.isascii() and letter.isalnum())[:24]
    stem = stem or "source"
    tries = (f"{stem}{number}" for number in itertools.count(2))
    return stem if stem not in taken else next(key for key in tries if key not in taken)
