"""Title and text of a leaf being written: what is saved, and what another window does meanwhile."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from binder.page.editing.flow import flowing
from binder.page.markup.markdown import LONGEST
from binder.page.merging import together
from binder.store.clock import new_uid
from binder.study.leaves import leaves
from binder.study.leaves.leaves import LeafView
from ui.writing.editor.keeping import Pending

MEANWHILE = (
    "Another window changed this leaf meanwhile. What you write here stands; what was written "
    "there is kept among its earlier versions."
)
TOGETHER = "Another window wrote on this leaf too; what was written in both stands here now."


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
            # Read and written in one step, so that nobody writes between.
            with binder.change("Write", sitting):
                both = self._with_theirs(leaves.leaf(binder, uid), now.text)
                kept = text if both is None else both
                changed = leaves.write(
                    binder, uid, title=now.title, text=kept, seen=seen, sitting=sitting
                )
            if self._is_open(uid):
                self._seen, self._raw = changed, kept
            if both is not None:
                self._asked = State(now.title, both)
                self._fields.adopt(self._asked)

        return Pending(keep, f"# {now.title}\n\n{now.text}\n", now)

    def kept(self) -> None:
        """What `pending` gave last is saved now."""
        self._saved = self._asked

    def _is_open(self, uid: str) -> bool:
        return self._view is not None and self._view.uid == uid

    def _with_theirs(self, view: LeafView, mine: str) -> str | None:
        """What is written here with what another window wrote meanwhile, told to the user.

        None where nobody else wrote, or where both changed the same words: then mine stand.
        """
        still = self._is_open(view.uid)
        if (still and self._seen == view.changed) or view.text in (self._raw, self._saved.text):
            return None
        theirs = to_write(view.text)
        both = together(self._saved.text, mine, theirs) if still else None
        self._said(MEANWHILE if both is None else TOGETHER)
        return both

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
