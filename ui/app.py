"""Starts the window: `python -m ui.app [SHELF]`."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from types import TracebackType

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from binder.errors import RingboundError
from binder.store.shelf import Shelf
from ui import fonts, theme
from ui.desk.window import Window
from ui.memory import Memory
from ui.session import Session

FIRST_SIZE = (1600, 1000)


class Program:
    """The application and its one window; another shelf gets another window in its place."""

    def __init__(self, app: QApplication, memory: Memory, today: date | None = None) -> None:
        self.app, self.memory, self.today = app, memory, today
        self.look = theme.Look(theme.load(memory.theme, memory.scale))
        theme.apply(app, self.look.theme)
        self.window: Window | None = None

    def open(self, path: Path) -> Window:
        """Open the shelf at `path` in the window."""
        shelf = Shelf(path)
        window = Window(Session(shelf, self.today), self.look, self.memory)
        window.changing_shelf.connect(self.change)
        self._size(window)
        before, self.window = self.window, window
        window.start(self.memory.spot(path))
        window.show()
        if before is not None:
            before.close()
            before.session.shelf.close()
            before.deleteLater()
            self.memory.shelf = path
        return window

    def change(self, path: Path) -> None:
        """Open another shelf instead of this one; if that fails this one stays."""
        try:
            self.memory.welcomed = True
            self.open(path)
        except RingboundError as error:
            if self.window is not None:
                self.window.say(str(error))

    def welcome(self) -> None:
        """Lay the welcome leaf on the sample shelf."""
        from ui.leaves.welcome import WelcomePage

        if self.window is not None:
            page = WelcomePage(self.window)
            self.window.lay_stage("welcome", page, None)
            page.focus_in()

    def _size(self, window: Window) -> None:
        kept = self.memory.window
        if kept is None or not window.restoreGeometry(kept):
            room = QGuiApplication.primaryScreen().availableGeometry()
            window.resize(
                min(FIRST_SIZE[0], room.width() - 40), min(FIRST_SIZE[1], room.height() - 60)
            )

    def cut_letters(self) -> None:
        """Cut the weights of the letters if that was not done at set-up."""
        if fonts.missing():
            fonts.make_beside(self.look.refresh, self.app)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the program; returns its exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    app = QApplication.instance() or QApplication(["ringbound"])
    app.setApplicationName("Ringbound")
    app.setDesktopFileName("ringbound")
    memory = Memory.of_user()
    program = Program(app, memory)
    _catch(program)
    try:
        _open_first(program, given)
    except RingboundError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    program.cut_letters()
    return int(app.exec())


def _open_first(program: Program, given: list[str]) -> None:
    path = Path(given[0]) if given else program.memory.shelf
    if path is None:
        from ui.places import sample_shelf

        path = sample_shelf()
    program.open(path)
    if not given and not program.memory.welcomed:
        program.welcome()


def _catch(program: Program) -> None:
    """A fault of ours becomes a sentence; what was written is in the binder already."""

    def caught(
        kind: type[BaseException], error: BaseException, where: TracebackType | None
    ) -> None:
        traceback.print_exception(kind, error, where)
        if program.window is not None and isinstance(error, Exception):
            own = isinstance(error, RingboundError)
            program.window.say(
                str(error)
                if own
                else f"Something went wrong here ({error}). What you wrote is safe."
            )

    sys.excepthook = caught


if __name__ == "__main__":
    raise SystemExit(main())
