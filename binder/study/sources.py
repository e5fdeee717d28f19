"""What many sources say of a card, side by side, and the sources themselves."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Leaf, Source, SourceNote
from binder.store.shelf import Shelf


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
    query = (
        SourceNote.select()
        .join(Leaf)
        .where(Leaf.uid == leaf_uid)
        .order_by(SourceNote.place, SourceNote.id)
    )
    notes = [
        NoteView(row.uid, row.source, row.aspect, row.text, row.locator)
        for row in binder.all(query)
    ]
    keys = dict.fromkeys(note.source for note in notes)
    return SideBySide(
        tuple(known.get(key, SourceView("", key, "", {})) for key in keys),
        tuple(dict.fromkeys(note.aspect for note in notes)),
        {(note.source, note.aspect): note for note in notes},
    )


def note(
    binder: Binder, leaf_uid: str, source: str, aspect: str, text: str, locator: str = ""
) -> None:
    """Write one cell of a card's table; an empty text clears it."""
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
        elif text.strip():
            change.add(
                SourceNote, leaf=leaf.id, card=leaf.card, source=source, aspect=aspect,
                text=text.strip(), locator=locator, place=(last or 0.0) + 1,
            )  # fmt: skip
