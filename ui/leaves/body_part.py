"""Title and text of a leaf being written: what is saved, and what another window does meanwhile."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from binder.page.flow import flowing
from binder.page.markdown import LONGEST
from binder.store.clock import new_uid
from binder.store.file import Binder
from binder.study import leaves
from binder.study.leaves import LeafView
from ui.leaves.keeping import Pending

MEANWHILE = (
    "Another window changed this leaf meanwhile. What you write here stands; what was written "
    "there is kept among its earlier versions."
)


def to_write(text: str) -> str:
    """A leaf's text as it is shown to be written on; it reads the same as it is kept."""
    return text if len(text) > LONGEST else flowing(text)


@dataclass(frozen=True, slots=True)
class State:
    """Title and text as they stand in the fields; the title cleaned to one line."""

    title: str
    text: str


class Fields(Protocol):
    """Where title and text are typed."""

    def state(self) -> State:
        """What stands there now."""

    def adopt(self, state: State) -> None:
        """Put in what another window wrote, as a step that can be undone."""


class BodyPart:
    """Saves title and text, through `leaves.write`, and follows what is written elsewhere."""

    def __init__(self, fields: Fields, said: Callable[[str], None]) -> None:
        self._fields, self._said = fields, said
        self._view: LeafView | None = None
        self._saved = State("", "")
        self._raw = ""
        self._seen, self._sitting = 0, ""
        self._asked = State("", "")

    def open(self, view: LeafView, shown: str) -> None:
        """Take up a leaf whose text is shown as `shown`, which reads the same as it is kept."""
        self._view, self._seen, self._raw = view, view.changed, view.text
        self._sitting = new_uid()
        self._saved = State(view.title, shown)

    def _now(self) -> State:
        """What is to be saved; a leaf keeps its title until there is another."""
        state = self._fields.state()
        return State(state.title or self._saved.title, state.text)

    def pending(self) -> Pending | None:
        """What is to be saved now, or None."""
        now = self._now()
        if self._view is None or now == self._saved:
            return None
        self._asked = now
        binder, uid, seen = self._view.binder, self._view.uid, self._seen
        sitting = self._sitting
        text = self._raw if now.text == self._saved.text else now.text

        def keep() -> None:
            self._look_first(binder, uid)
            changed = leaves.write(
                binder, uid, title=now.title, text=text, seen=seen, sitting=sitting
            )
            if self._view is not None and self._view.uid == uid:
                self._seen, self._raw = changed, text

        return Pending(keep, f"# {now.title}\n\n{now.text}\n", now)

    def kept(self) -> None:
        """What `pending` gave last is saved now."""
        self._saved = self._asked

    def _look_first(self, binder: Binder, uid: str) -> None:
        view = leaves.leaf(binder, uid)
        mine = self._view is not None and self._view.uid == uid and self._seen == view.changed
        if not mine and view.text not in (self._raw, self._saved.text):
            self._said(MEANWHILE)

    def look(self) -> None:
        """Take over what was written elsewhere, where nothing was changed here."""
        if self._view is None:
            return
        view = leaves.leaf(self._view.binder, self._view.uid)
        if view.changed == self._seen:
            return
        now, before, same = self._fields.state(), self._saved, view.text == self._raw
        theirs = State(view.title, before.text if same else to_write(view.text))
        clean = now.text == before.text
        if same or clean:
            self._seen, self._raw, self._saved = view.changed, view.text, theirs
        mine = State(
            theirs.title if now.title in ("", before.title) else now.title,
            theirs.text if clean else now.text,
        )
        if mine != now:
            self._fields.adopt(mine)
