"""How the text of a leaf grew: what it said before, and taking an earlier state up again.

Each version is packed against the one before it, so that a long history costs little more than
the words that changed. Versions are written once and never again.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from peewee import fn

from binder.errors import CanMend, OwnFault
from binder.page.compare import GONE, packed, pieces, unpacked
from binder.store.change import Change
from binder.store.clock import now_ms
from binder.store.file import Binder
from binder.store.schema import Leaf, Version

VERSION_AFTER = 10 * 60_000
"""Sittings that begin within so many milliseconds of a version become one with it."""
SUBSTANCE = 6
"""So many words gone at one saving are more than a slip put right."""
_WORD = re.compile(r"\w+")


@dataclass(frozen=True, slots=True)
class Earlier:
    """A state of a leaf's text; `at` is when it was written, ISO 8601."""

    at: str
    title: str
    text: str


def of_text(binder: Binder, leaf_uid: str) -> list[Earlier]:
    """The earlier states of a leaf, oldest first; the present one is not among them."""
    query = Version.select(Version.at, Version.title, Version.text).join(Leaf)
    rows = binder.all(query.where(Leaf.uid == leaf_uid).order_by(Version.id).tuples())
    found, text = [], ""
    for at, title, data in rows:
        text = whole_text(data, text)
        found.append(Earlier(at, title, text))
    return found


def whole_text(data: bytes, base: str) -> str:
    """A packed version again; `base` is the text of the version before it ('' for the first)."""
    try:
        return unpacked(bytes(data), base)
    except ValueError as error:
        raise OwnFault(
            "An earlier version of this leaf cannot be read; the leaf is safe."
        ) from error


def worth_keeping(binder: Binder, row: Any, text: str, seen: int | None, sitting: str) -> bool:
    """Whether what a leaf row says should be kept before `text` takes its place.

    It should where the leaf was changed elsewhere since `seen`; where the words go back to before
    this sitting, the uid that was made when it began ('' for one saving that stands alone), and
    the last version is a while ago; and where this saving takes several words away.
    """
    if not row.text:
        return False
    if seen is not None and row.changed != seen:
        return True
    if not sitting or not binder.gate.touched(row.uid, sitting):
        last = binder.value(Version.select(fn.MAX(Version.changed)).where(Version.leaf == row.id))
        if last is None or now_ms() - last > VERSION_AFTER:
            return True
    gone = (piece.text for piece in pieces(row.text, text) if piece.how == GONE)
    return sum(len(_WORD.findall(said)) for said in gone) >= SUBSTANCE


def keep(binder: Binder, change: Change, row: Any) -> None:
    """Add the state of a leaf row to its history, within a step that changes it."""
    before = of_text(binder, row.uid)
    data = packed(row.text, before[-1].text if before else None)
    change.add(Version, leaf=row.id, at=_moment(row), title=row.title, text=data)


def _moment(row: Any) -> str:
    return datetime.fromtimestamp(row.changed / 1000).isoformat(timespec="seconds")


def bring_back(binder: Binder, leaf_uid: str, version: Earlier) -> None:
    """Let a leaf say what it said then; what it says now becomes a version of its history."""
    row = binder.first(Leaf.select().where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That leaf is no longer in this binder.")
    if (row.title, row.text) == (version.title, version.text):
        raise CanMend("The leaf says this already.")
    with binder.change("Bring back an earlier version") as change:
        keep(binder, change, row)
        change.edit(Leaf, leaf_uid, title=version.title, text=version.text)
