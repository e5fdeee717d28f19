"""Filing handouts beside the window's thread: one order after another, each can be stopped."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QObject, Signal

from binder.errors import CanMend, RingboundError
from binder.store.file import Binder
from binder.study.handouts import filed_words, filing
from binder.study.handouts.filing import Ready, Report
from binder.study.leaves import files
from binder.study.leaves.tabs import TabView
from ui.session.jobs import Newest
from ui.session.picture import MOST_PIXELS, natural_size, picture_of, too_large
from ui.writing.editor.pasting import encoded


@dataclass(frozen=True, slots=True)
class Order:
    """Files and folders to be filed behind a tab, on leaves of that day."""

    binder: Binder
    tab: TabView
    paths: tuple[Path, ...]
    day: str


def looked_at(file: Ready) -> Ready:
    """A picture as it is to be kept; CanMend for one that is damaged or far too large.

    One of a kind no leaf can show, such as BMP or TIFF, becomes PNG or JPEG.
    """
    size = natural_size(file.data)
    if not size.isValid() or size.isEmpty():
        if file.media:
            raise CanMend(f"“{file.name}” is damaged, so it was not filed.")
        return file
    if too_large(size, file.media):
        millions = size.width() * size.height() // 1_000_000
        raise CanMend(
            f"“{file.name}” has {millions} million pixels, more than can be shown; make it "
            f"smaller than {MOST_PIXELS // 1_000_000} million, then file it again."
        )
    return file if file.media in files.KEPT_AS_PICTURE else _remade(file)


def _remade(file: Ready) -> Ready:
    image = picture_of(file.data)
    if image.isNull():
        raise CanMend(f"“{file.name}” is damaged, so it was not filed.")
    name, media, data = encoded(image, Path(file.name).stem)
    return Ready(name, file.title, media, data)


class Filing(QObject):
    """Keeps the files on another thread, adds the leaves here, then reads the words over there."""

    going = Signal(str, int, int)
    """A sentence, and how much is done of how much; '' once there is nothing more to do."""
    ended = Signal(object, object)
    """An Order, and the Report of what came of it."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._waiting: deque[Order] = deque()
        self._now: Order | None = None
        self._stopped = False
        self.keeping, self.reading = Newest(self), Newest(self)
        self.keeping.done.connect(self._kept)
        self.keeping.failed.connect(self._failed)
        self.reading.done.connect(lambda _none: self._next())
        self.reading.failed.connect(lambda _sentence: self._next())

    @property
    def busy(self) -> bool:
        """Whether something is being filed or read."""
        return self._now is not None

    def start(self, order: Order) -> None:
        """File this, once all that was asked for before is filed."""
        order.binder.gate.must_be_writable()
        self._waiting.append(order)
        if self._now is None:
            self._next()

    def stop(self) -> None:
        """Take up nothing more; what is kept already gets its leaves."""
        self._stopped = True
        self._waiting.clear()

    def wait(self) -> None:
        """Until nothing runs on the other thread."""
        self.keeping.wait()
        self.reading.wait()

    def finish(self) -> None:
        """Stop, with leaves for what is kept already, before the binders are closed."""
        self.stop()
        while self.busy:
            self.wait()
            QCoreApplication.sendPostedEvents()

    def _next(self) -> None:
        self._now = self._waiting.popleft() if self._waiting else None
        self._stopped = False
        if self._now is None:
            self.going.emit("", 0, 0)
            return
        order = self._now
        self.going.emit("Looking…", 0, 0)
        self.keeping.start(
            lambda stop: filing.keep_all(
                order.binder, order.paths, self._tell_filing, self._stopping(stop), looked_at
            )
        )

    # Called on the other thread; the signal is carried over to this one.

    def _tell_filing(self, done: int, of: int) -> None:
        self.going.emit(f"Filing {done + 1:,} of {of:,}…", done, of)

    def _tell_reading(self, done: int, of: int, pages: int) -> None:
        page = f", page {pages:,}" if pages else ""
        said = f"Filed. Reading the words of {done + 1:,} of {of:,}{page}…"
        self.going.emit(said, done, of)

    def _stopping(self, stop: Callable[[], bool]) -> Callable[[], bool]:
        return lambda: self._stopped or stop()

    def _kept(self, report: Report) -> None:
        """The files lie in the binder: now the leaves."""
        order = self._now
        assert order is not None
        try:
            _must_be_open(order.binder)
            if report.filed:
                report.leaves = filing.add_leaves(order.binder, order.tab, report.filed, order.day)
        except RingboundError as error:
            report.amiss.append(("", str(error)))
        self.ended.emit(order, report)
        pairs = [(leaf, [file.uid]) for leaf, file in zip(report.leaves, report.filed, strict=False)
                 if file.media == files.PDF]  # fmt: skip
        if not pairs or self._stopped:
            self._next()
            return
        self.reading.start(
            lambda stop: filed_words.read_in(
                order.binder, pairs, self._tell_reading, self._stopping(stop)
            )
        )

    def _failed(self, sentence: str) -> None:
        assert self._now is not None
        self.ended.emit(self._now, Report(amiss=[("", sentence)]))
        self._next()


def _must_be_open(binder: Binder) -> None:
    if binder.db.is_closed():
        raise CanMend(f"“{binder.name}” was set aside meanwhile; put it back, then file again.")
