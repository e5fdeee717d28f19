"""Saving by itself: soon after a pause, again and again where it fails, and never losing words."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from time import monotonic
from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal

from binder.errors import RingboundError
from ui.kit.quoted import quoted
from ui.kit.soon import Soon
from ui.session.jobs import Newest
from ui.writing.editor import rescue

PAUSE_MS = 1200
"""From the last key to saving."""
LONGEST_MS = 12_000
"""Saved at least so often while somebody types without a pause."""
NOTED_MS = 900
"""Words typed stand in a file of their own so soon, written by another thread, until they are
saved: none is older than two seconds when the computer stops, and no key waits for a disk.
"""
AGAIN_MS = 4000
"""From a saving that failed to the next try."""


@dataclass(frozen=True, slots=True)
class Pending:
    """Something not yet saved: how to save it, and its words as they are put by if that fails."""

    keep: Callable[[], None]
    words: str
    state: object = None
    """What its part can put back into its fields."""


class Part(Protocol):
    """A part of the page that is saved."""

    def pending(self) -> Pending | None:
        """What is to be saved now, or None when all is saved already."""

    def kept(self) -> None:
        """What `pending` gave last is saved now."""


@dataclass(slots=True)
class Left:
    """Words of a leaf that was left before they could be saved."""

    uid: str
    title: str
    waiting: list[Pending]


class Keeping(QObject):
    """Saves the parts of the leaf that is open, and what is left over from others."""

    failed = Signal(str)
    """Why saving failed; '' once it did not."""
    said = Signal(str)
    """Something the user should know about words of a leaf that is no longer open."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.parts: list[Part] = []
        self.uid, self.title = "", ""
        self._left: dict[str, Left] = {}
        self._since = 0.0
        self._timer = QTimer(self, singleShot=True)
        self._timer.timeout.connect(self.keep)
        self._noting = Soon(self, NOTED_MS)
        self._noting.timeout.connect(self._note)
        self._notes, self._noted = Newest(self), ""
        self._again = QTimer(self, interval=AGAIN_MS)
        self._again.timeout.connect(self._retry)

    def open(self, uid: str, title: str, parts: list[Part]) -> None:
        """Keep another leaf from now on."""
        self._timer.stop()
        self.uid, self.title, self.parts = uid, title, parts
        self._since = 0.0
        self.failed.emit("")

    def look(self) -> None:
        """Let every part take over what was written elsewhere."""
        for part in self.parts:
            look = getattr(part, "look", None)
            if look is not None:
                look()

    def touch(self) -> None:
        """Something was changed: save after a pause."""
        now = monotonic()
        self._since = self._since or now
        room = LONGEST_MS - (now - self._since) * 1000
        self._timer.start(max(0, min(PAUSE_MS, round(room))))
        self._noting.begin()

    def _waiting(self) -> list[Pending]:
        """What is not saved yet, part by part."""
        return [found for part in self.parts if (found := part.pending())]

    def _note(self) -> None:
        """Have what is not saved yet put by on the other thread."""
        waiting = self._waiting()
        if waiting and self.uid:
            uid, title, words = self.uid, self.title, _joined(waiting)
            self._noted = uid
            self._notes.start(lambda _stop: rescue.put_by(uid, title, words))

    def _forget_note(self) -> None:
        """What was put by while it waited is saved now."""
        self._noting.stop()
        if self._noted:
            uid, self._noted = self._noted, ""
            self._notes.start(lambda _stop: rescue.forget(uid))

    def wait(self) -> None:
        """Until the other thread has nothing to write."""
        self._notes.wait()

    def keep(self) -> bool:
        """Save what is to be saved; False where something could not be."""
        self._timer.stop()
        self._since = 0.0
        trouble = ""
        for part in self.parts:
            trouble = self._keep(part) or trouble
        if trouble:
            self._again.start()
        elif not self._left:
            self._again.stop()
        self.failed.emit(trouble)
        if not trouble:
            self._forget_note()
        if not trouble and self.uid:
            self._let_go(self.uid)
        return not trouble

    def _keep(self, part: Part) -> str:
        """Save one part; returns the sentence of its failure."""
        waiting = part.pending()
        if waiting is None:
            return ""
        try:
            waiting.keep()
        except RingboundError as error:
            return str(error)
        part.kept()
        return ""

    def leave(self) -> None:
        """Save before another leaf is opened; what cannot be saved is put by and tried again."""
        if not self.uid or self.keep():
            return
        waiting = self._waiting()
        self._left[self.uid] = Left(self.uid, self.title, waiting)
        self.wait()
        path = rescue.put_by(self.uid, self.title, _joined(waiting))
        where = f" and lies as a copy in “{path}”" if path else ""
        self.said.emit(
            f"{quoted(self.title)} is not saved yet; it is tried again every few seconds{where}."
        )
        self._again.start()

    def take_back(self, uid: str) -> list[Pending]:
        """What of a leaf still waits to be saved, now that the leaf is open again."""
        left = self._left.get(uid)
        if left is None or self._kept_after_all(left):
            return []
        return self._left.pop(uid).waiting

    def _retry(self) -> None:
        for left in tuple(self._left.values()):
            if self._kept_after_all(left):
                self.said.emit(f"{quoted(left.title)} is saved now.")
        if self.uid and any(part.pending() for part in self.parts):
            self.keep()
        elif not self._left:
            self._again.stop()

    def _kept_after_all(self, left: Left) -> bool:
        """Try again to save words of a leaf that was left."""
        try:
            while left.waiting:
                left.waiting[0].keep()
                left.waiting.pop(0)
        except RingboundError:
            return False  # what hinders it was said when the leaf was left
        self._let_go(left.uid)
        return True

    def _let_go(self, uid: str) -> None:
        if self._left.pop(uid, None) is not None:
            rescue.forget(uid)


def _joined(waiting: Sequence[Pending]) -> str:
    """The words of all parts, as they are put by."""
    return "\n\n".join(one.words for one in waiting)
