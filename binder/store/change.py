"""The gate: every change to a binder goes through here, once.

A step is one transaction. It records each row before and after, so that the same list undoes it,
redoes it, and says afterwards which rows changed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count
from typing import Any

from binder.errors import CanMend
from binder.store.clock import new_uid, now_ms
from binder.store.connection import HOME, Connection
from binder.store.parts import leaf_row
from binder.store.schema import Info, Kept, Leaf
from binder.store.sentences import spoken

_UNDO_STEPS = 200
_NUMBERS = count(1)
_HALF = re.compile("[\ud800-\udfff]")
_CHANGED_SINCE = (
    "“{}” stands as it is, since another window or program changed the same thing afterwards."
)
_NOT_UNDONE = (Kept,)
"""Kept files only ever grow; undoing a step leaves them."""

Fields = dict[str, Any]
Table = Any
"""A model class of binder.store.schema; peewee adds its fields at run time."""


@dataclass(frozen=True, slots=True)
class Notice:
    """What a step changed: its label and the (table, uid) pairs; uid is the key for info."""

    label: str
    rows: frozenset[tuple[str, str]]

    def touches(self, *tables: str) -> bool:
        """True if a row of one of the tables changed."""
        return any(table in tables for table, _ in self.rows)


@dataclass(slots=True)
class RowStep:
    """One row before and after; None where it did not exist.

    `after` is read when the step is undone: until then the row itself says it. `stamp` tells
    whether the row is still as the step left it (see `stamp_of`).
    """

    model: Table
    uid: str
    before: Fields | None
    stamp: Any = None
    after: Fields | None = None


@dataclass(slots=True)
class Step:
    """All rows of one change. `number` counts steps over all binders, in the order of their making;
    steps of several binders with one `joined` are undone together.
    """

    label: str
    joined: str = ""
    rows: list[RowStep] = field(default_factory=list)
    number: int = field(default_factory=_NUMBERS.__next__)


def stamp_of(row: Fields | None) -> Any:
    """What differs whenever a row was written: its `changed`, or the value of an info row."""
    return None if row is None else row.get("changed", row.get("value"))


def row_of(binder: Connection, model: Table, uid: str) -> Fields | None:
    """The row as a dictionary, or None where there is none."""
    key = Info.key if model is Info else model.uid
    found = binder.first(model.select().where(key == uid).dicts())
    return dict(found) if found else None


def _writable(fields: Fields) -> Fields:
    """Halves of characters, as broken bytes of a command line leave them, as a mark each."""
    return {
        key: _HALF.sub("\N{REPLACEMENT CHARACTER}", value) if isinstance(value, str) else value
        for key, value in fields.items()
    }


class Change:
    """The verbs inside one step."""

    def __init__(self, binder: Connection, step: Step) -> None:
        self._binder = binder
        self._step = step

    def add(self, model: Table, **fields: Any) -> str:
        """Insert a row; returns its uid (given, or new)."""
        fields = _writable(fields)
        fields.setdefault("uid", new_uid())
        fields.setdefault("changed", now_ms())
        self._run(model.insert(**fields))
        self._note(model, str(fields["uid"]), None, fields)
        return str(fields["uid"])

    def edit(self, model: Table, uid: str, **fields: Any) -> None:
        """Change fields of the row with that uid; raises CanMend if it is gone."""
        fields = _writable(fields)
        before = self._row(model, uid)
        if before is None:
            raise CanMend("What you were changing is no longer there; it was removed elsewhere.")
        # Two writings within a millisecond are still told apart.
        fields.setdefault("changed", max(now_ms(), int(before.get("changed", 0)) + 1))
        self._run(model.update(**fields).where(model.uid == uid))
        self._note(model, uid, before, fields)

    def remove(self, model: Table, uid: str) -> None:
        """Delete the row with that uid and, for a leaf, what belongs to it."""
        if model is Leaf:
            self._remove_parts(uid)
        before = self._row(model, uid)
        self._run(model.delete().where(model.uid == uid))
        if before is not None:
            self._note(model, uid, before, None)

    def put_info(self, key: str, value: str) -> None:
        """Set a fact about the binder itself."""
        before = self._binder.info.get(key)
        self.mark_info(key, value)
        was = None if before is None else {"key": key, "value": before}
        self._note(Info, key, was, {"value": value})

    def say(self, model: Table, known: Any, text: str, **of: Any) -> None:
        """Let the row `known` say a text, or a new one with the fields `of` where it is None; ''
        takes the row away.
        """
        if known is None:
            self.add(model, text=text, **of)
        elif text:
            self.edit(model, known.uid, text=text)
        else:
            self.remove(model, known.uid)

    def mark_info(self, key: str, value: str) -> None:
        """Set a fact that nobody did on purpose, such as what was read: undo passes over it."""
        self._run(Info.insert(key=key, value=value).on_conflict_replace())
        self._binder.info[key] = value

    def forget_info(self, key: str) -> None:
        """Take such a fact away again."""
        self._run(Info.delete().where(Info.key == key))
        self._binder.info.pop(key, None)

    def _remove_parts(self, leaf_uid: str) -> None:
        from binder.store.schema import MODELS, OfLeaf

        leaf = leaf_row(self._binder, leaf_uid)
        for model in MODELS:
            if issubclass(model, OfLeaf):
                for row in self._binder.all(model.select(model.uid).where(model.leaf == leaf)):
                    self.remove(model, row.uid)

    def _row(self, model: Table, uid: str) -> Fields | None:
        return row_of(self._binder, model, uid)

    def _note(
        self, model: Table, uid: str, before: Fields | None, after: Mapping[str, Any] | None
    ) -> None:
        if model not in _NOT_UNDONE:
            stamp = stamp_of(dict(after)) if after is not None else None
            self._step.rows.append(RowStep(model, uid, before, stamp))

    def _run(self, query: Any) -> None:
        query.bind(self._binder.db).execute()


class Gate:
    """Keeps the steps of one open binder for undo, and tells listeners."""

    def __init__(self, binder: Connection) -> None:
        self._binder = binder
        self._open: Change | None = None
        self._done: list[Step] = []
        self._undone: list[Step] = []
        self.listeners: list[Callable[[Notice], None]] = []
        self.data_version: int | None = None

    @contextmanager
    def step(self, label: str, joined: str = "") -> Iterator[Change]:
        """See Binder.change; a change inside a change joins the outer one."""
        if self._open is not None:
            yield self._open
            return
        step = Step(label, joined)
        with self._written():
            self._open = Change(self._binder, step)
            if self._binder.info.get(HOME) != self._binder.path.name:
                self._open.mark_info(HOME, self._binder.path.name)
            try:
                yield self._open
            finally:
                self._open = None
        if step.rows:
            self._done = [*self._done[-_UNDO_STEPS + 1 :], step]
            self._undone.clear()
        self._tell(step)

    def must_be_writable(self) -> None:
        """Raise CanMend if the binder can only be read."""
        if not self._binder.writable:
            raise CanMend(
                f"“{self._binder.path.name}” can be read but not written, because its file or "
                "folder is read-only; change that, or copy the binder to a folder of your own."
            )

    @contextmanager
    def _written(self) -> Iterator[None]:
        self.must_be_writable()
        path = self._binder.path
        info = dict(self._binder.info)
        try:
            with spoken(path), self._binder.db.atomic("IMMEDIATE"):
                yield
        except BaseException:
            self._binder.info = info
            raise

    def forget(self) -> None:
        """There is nothing to undo any more: another file stands in this one's place."""
        self._done, self._undone, self.data_version = [], [], None

    @property
    def last_done(self) -> Step | None:
        """The step that `undo` would take back."""
        return self._done[-1] if self._done else None

    @property
    def last_undone(self) -> Step | None:
        """The step that `redo` would do again."""
        return self._undone[-1] if self._undone else None

    def touched(self, uid: str, joined: str) -> bool:
        """Whether a step of those `joined` changed the row of that uid."""
        return any(
            row.uid == uid
            for step in reversed(self._done)
            if step.joined == joined
            for row in step.rows
        )

    def undo_label(self) -> str | None:
        """Label of the step that `undo` would take back."""
        return self._done[-1].label if self._done else None

    def undo(self) -> str | None:
        """Take back the last step; returns its label."""
        return self._shift(self._done, self._undone, backwards=True)

    def redo(self) -> str | None:
        """Do the last undone step again; returns its label."""
        return self._shift(self._undone, self._done, backwards=False)

    def _shift(self, source: list[Step], target: list[Step], *, backwards: bool) -> str | None:
        if not source:
            return None
        step = source[-1]
        with self._written():
            for row in reversed(step.rows) if backwards else step.rows:
                now = row_of(self._binder, row.model, row.uid)
                if stamp_of(now) != (row.stamp if backwards else stamp_of(row.before)):
                    source.pop()
                    raise CanMend(_CHANGED_SINCE.format(step.label))
                if backwards:
                    row.after = now
                self._put(row, row.before if backwards else row.after)
        target.append(source.pop())
        self._tell(step)
        return step.label

    def _put(self, row: RowStep, state: Fields | None) -> None:
        key = Info.key if row.model is Info else row.model.uid
        db = self._binder.db
        if state is None:
            row.model.delete().where(key == row.uid).bind(db).execute()
        elif row.model.update(**state).where(key == row.uid).bind(db).execute() == 0:
            row.model.insert(**state).bind(db).execute()
        if row.model is Info:
            self._binder.info.pop(row.uid, None)
            self._binder.info |= {row.uid: state["value"]} if state else {}

    def _tell(self, step: Step) -> None:
        rows = frozenset((row.model._meta.table_name, row.uid) for row in step.rows)
        notice = Notice(step.label, rows)
        for told in tuple(self.listeners):
            told(notice)
