"""Draws the main screens to PNG files without a display: `python -m ui.pictures SHELF FOLDER`."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from PySide6.QtCore import (
    QEvent,
    QEventLoop,
    QMessageLogContext,
    QTimer,
    QtMsgType,
    qFormatLogMessage,
    qInstallMessageHandler,
)
from PySide6.QtWidgets import QApplication

from binder.errors import CanMend, RingboundError
from binder.store.clock import Clock, OtherDay
from binder.store.schema import SUFFIX, Leaf
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study.dates import parsed
from ui.actions.installed import actions_of
from ui.app import Program, application
from ui.desk.window import Window
from ui.session.memory import Memory
from ui.session.picture import in_bytes

LARGE, SMALL = (1600, 1000), (1100, 700)
SETTLE_MS = 60
_NOISE = "This plugin does not support propagateSizeHints()"
"""What Qt says of every window where there is no display; it means nothing to a user."""


@dataclass(frozen=True)
class Screen:
    """One picture: file name, window size, theme, scale of the text, and how to get there."""

    name: str
    size: tuple[int, int]
    theme: str
    scale: float
    go: Callable[[Window], None]


def screens() -> Iterator[Screen]:
    """The main screens: light, dark, a small window, large letters."""
    yield Screen("1-open-binder", LARGE, "day", 1.0, lay_reading)
    yield Screen("2-lamp-light", LARGE, "lamp", 1.0, lay_reading)
    yield Screen("3-small-window", SMALL, "day", 1.0, lay_reading)
    yield Screen("4-small-window-facing", SMALL, "lamp", 1.0, lay_facing)
    yield Screen("5-large-letters", LARGE, "day", 1.5, lay_reading)
    yield Screen("6-contents", LARGE, "day", 1.0, lay_contents)
    yield Screen("7-writing", LARGE, "day", 1.0, write)
    yield Screen("8-new-reading", LARGE, "day", 1.0, log_reading)
    yield Screen("9-find", LARGE, "day", 1.0, find)
    yield Screen("10-print", LARGE, "day", 1.0, print_tab)
    yield Screen("11-card-leaf", LARGE, "day", 1.0, lay_card)
    yield Screen("12-course-plan", LARGE, "day", 1.0, lay_plan)
    yield Screen("13-recall", LARGE, "lamp", 1.0, recall)


def newest_reading(shelf: Shelf) -> str:
    """Uid of a telling reading: the newest one of five to seven cards, else any, else ''."""
    for least, most in ((5, 7), (1, 99)):
        found = []
        for binder in shelf.binders:
            rows = binder.sql(
                "SELECT leaf.day, leaf.uid FROM leaf JOIN placed ON placed.leaf_id = leaf.id "
                "WHERE leaf.aside IS NULL GROUP BY leaf.id HAVING count(*) BETWEEN ? AND ? "
                "ORDER BY leaf.day DESC LIMIT 1",
                (least, most),
            )
            found += [(str(day), str(uid)) for day, uid in rows]
        if found:
            return max(found)[1]
    return ""


def lay_reading(window: Window) -> None:
    """A reading, the leaf of its last card facing it."""
    uid = newest_reading(window.session.shelf)
    if uid:
        window.session.open_leaf(uid)
        from binder.study.readings.readings import reading

        view = window.session.leaf_of(window.session.left)
        if view is not None:
            window.session.face_card(reading(view.binder, uid).laid[-1].card)
    window.cover.show_side("left")


def lay_facing(window: Window) -> None:
    """The same, its facing leaf shown where one has room."""
    lay_reading(window)
    window.cover.show_side("right")


def lay_contents(window: Window) -> None:
    """The contents of the readings log."""
    lay_reading(window)
    actions_of(window).contents()


def write(window: Window) -> None:
    """Writing on a leaf."""
    lay_reading(window)
    actions_of(window).write()


def log_reading(window: Window) -> None:
    """A reading half typed in."""
    lay_reading(window)
    actions_of(window).new_reading()
    actions_of(window).entry.show_example()


def find(window: Window) -> None:
    """Words found in all binders."""
    lay_reading(window)
    window.bar.find_field.setText("quay")
    window.bar.find_field.setFocus()
    window.finder.seek("quay")
    window.finder.job.wait()


def print_tab(window: Window) -> None:
    """The sheets of the log before they are printed."""
    lay_reading(window)
    actions_of(window).print()
    actions_of(window).proof.wait()


def lay_card(window: Window) -> None:
    """The leaf of the card whose picture is marked most, else of the first."""
    shelf, marked = window.session.shelf, []
    for binder in shelf.binders:
        marked += binder.sql("SELECT count(*), card FROM imagery GROUP BY card")
    found = shelf.card_leaf(max(marked)[1] if marked else "major-00")
    if found:
        window.session.open_leaf(found[1])


def lay_plan(window: Window) -> None:
    """The units of the course."""
    lay_card(window)
    actions_of(window).plan()


def recall(window: Window) -> None:
    """A recall round, the leaf turned."""
    actions_of(window).recall()
    actions_of(window).round.left.turning.emit()


def draw(shelf: Path, out: Path, clock: Clock) -> list[Path]:
    """Draw all screens of a shelf into `out`, on its last day, else today; returns the files."""
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CanMend(f"The folder “{out}” could not be made ({error.strerror}).") from error
    app = application()
    day = last_day(shelf)
    clock = OtherDay(day) if day else clock
    with tempfile.TemporaryDirectory() as folder:
        memory = Memory(Path(folder) / "desk.ini")
        return [
            _draw(
                app,
                memory,
                copied(shelf, Path(folder) / screen.name / shelf.resolve().name),
                clock,
                screen,
                out,
            )
            for screen in screens()
        ]


def copied(shelf: Path, folder: Path) -> Path:
    """The binders of a shelf in another folder, so that drawing leaves nothing on the shelf."""
    folder.mkdir(parents=True)
    for file in shelf.glob(f"*{SUFFIX}"):
        shutil.copy(file, folder)
    return folder


def _draw(
    app: QApplication, memory: Memory, shelf: Path, clock: Clock, screen: Screen, out: Path
) -> Path:
    memory.theme, memory.scale = screen.theme, screen.scale
    program = Program(app, memory, clock)
    window = program.open(shelf)
    window.resize(*screen.size)
    settle()
    # What a shelf does not hold yet cannot be shown; the picture says so, as the window does.
    window.guard(screen.go, window)
    settle()
    path = out / f"{screen.name}.png"
    write_whole(in_bytes(window.grab().toImage(), b"PNG"), path)
    window.close()
    window.session.close()
    window.deleteLater()  # the next one's style sheet would dress it again
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return path


def last_day(path: Path) -> date | None:
    """The day of the newest leaf, so that the slips are those of a day in use; None without one."""
    shelf = Shelf(path)
    days = [
        binder.value(Leaf.select(Leaf.day).order_by(Leaf.day.desc())) for binder in shelf.binders
    ]
    shelf.close()
    found = parsed(max((day for day in days if day), default=""))
    return found.date() if found else None


def settle() -> None:
    """Let the window paint and work beside it end."""
    loop = QEventLoop()
    QTimer.singleShot(SETTLE_MS, loop.quit)
    loop.exec()
    QApplication.processEvents()  # what a slow last step has left to be laid out


def _tell(kind: QtMsgType, context: QMessageLogContext, words: str) -> None:
    if words != _NOISE:
        sys.stderr.write(f"{qFormatLogMessage(kind, context, words)}\n")


def main(arguments: Sequence[str] | None = None) -> int:
    """Draw and say what was drawn; returns an exit code."""
    shelf, out = (Path(word) for word in (arguments or sys.argv[1:]))
    qInstallMessageHandler(_tell)
    try:
        for path in draw(shelf, out, Clock()):
            print(f"Drew {path}")
    except RingboundError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
