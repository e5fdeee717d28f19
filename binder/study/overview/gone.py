"""Gone for good: what the drawer held leaves every byte of the files of the shelf.

Emptying can be taken back until the drawer is shut; then the files are written anew. If that
could not be, as after a power cut, it is done when the shelf is opened the next time.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator
from datetime import date
from pathlib import Path

from binder.errors import RingboundError
from binder.store import copies
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import MODELS, Kept, Leaf, OfLeaf, Tab
from binder.store.shelf import Shelf
from binder.store.wiping import WIPE, wipe
from binder.study.cards import words
from binder.study.leaves import drawer, history

_UID = re.compile(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}", re.IGNORECASE)


def empty(shelf: Shelf) -> list[Binder]:
    """Empty the drawer and note what is to be wiped; returns the binders it was emptied from."""
    files = {binder: _files_aside(binder) for binder in shelf.binders if binder.writable}
    emptied = drawer.empty(shelf)
    for binder in emptied:
        with binder.change(drawer.EMPTY) as change:
            change.mark_info(WIPE, json.dumps(sorted(files[binder] | due(binder))))
    return emptied


def due(binder: Binder) -> set[str]:
    """The kept files that go with what was emptied."""
    try:
        return set(json.loads(binder.info.get(WIPE, "[]")))
    except (ValueError, TypeError):
        return set()


def wipe_due(shelf: Shelf, folder: Path | None = None, today: date | None = None) -> list[str]:
    """Wipe what was emptied and is to be gone; a sentence for each binder where it could not be.

    The copies in `folder` go with it, since they hold it, and one of `today` takes their place.
    What was done before in those binders cannot be undone afterwards.
    """
    failed = []
    for binder in shelf.binders:
        if binder.writable and WIPE in binder.info:
            try:
                _wipe(shelf, binder, folder)
                if folder is not None and today is not None:
                    copies.make(binder, folder, today)
            except RingboundError as error:
                failed.append(str(error))
    return failed


def _wipe(shelf: Shelf, binder: Binder, folder: Path | None) -> None:
    files = due(binder)
    loose = files - (_named(shelf, files) if files else set())
    with binder.change("Wipe") as change:
        for uid in sorted(loose):
            change.remove(Kept, uid)
    wipe(binder)
    if folder is not None:
        copies.forget(folder, binder.uid)
    # The note goes last: a wiping that was cut short is done again.
    with binder.change("Wipe") as change:
        change.forget_info(WIPE)
    binder.gate.forget()


def _files_aside(binder: Binder) -> set[str]:
    """The kept files that leaves in the drawer show or link to, their earlier states included."""
    leaves = Leaf.select(Leaf.uid).join(Tab)
    away = binder.all(leaves.where(Leaf.aside.is_null(False) | Tab.aside.is_null(False)))
    known = {row.uid for row in binder.all(Kept.select(Kept.uid))} if away else set()
    said = (text for row in away for text in everything_said(binder, row.uid))
    return _uids(said) & known


def everything_said(binder: Binder, uid: str) -> Iterator[str]:
    """Every text of a leaf and of what belongs to it, as it stands and as it stood before."""
    for fields in binder.all(Leaf.select().where(Leaf.uid == uid).dicts()):
        yield from map(str, fields.values())
    row = leaf_row(binder, uid)
    for model in MODELS:
        if issubclass(model, OfLeaf):
            for fields in binder.all(model.select().where(model.leaf == row).dicts()):
                yield from map(str, fields.values())
    yield from (version.text for version in history.of_text(binder, uid))
    yield from (version.text for version in words.history(binder, uid))


def _uids(texts: Iterable[str]) -> set[str]:
    return {found.lower() for text in texts for found in _UID.findall(text)}


_PACKED = """SELECT leaf.uid FROM leaf WHERE leaf.id IN (SELECT leaf_id FROM version)
  OR leaf.id IN (SELECT leaf_id FROM own_words WHERE packed IS NOT NULL)"""


def _named(shelf: Shelf, files: set[str]) -> set[str]:
    """Those of the files that anything left on the shelf still names."""
    found: set[str] = set()
    for binder in shelf.binders:
        for table, column in _columns(binder):
            for uid in files - found:
                where = f"SELECT 1 FROM {table} WHERE instr(lower({column}), ?) LIMIT 1"
                if binder.sql(where, (uid.lower(),)):
                    found.add(uid)
        if files - found:
            packed = (uid for (uid,) in binder.sql(_PACKED))
            said = (text for uid in packed for text in everything_said(binder, uid))
            found |= files & _uids(said)
    return found


def _columns(binder: Binder) -> Iterator[tuple[str, str]]:
    """Every column of words, but for the rows of the files themselves."""
    for model in MODELS:
        table = model._meta.table_name
        if model is not Kept and table != "info":
            for _, name, kind, *_rest in binder.sql(f"PRAGMA table_info({table})"):
                if kind == "TEXT" and name not in ("uid",):
                    yield table, name
