"""Starts the window: `python -m ui.app [SHELF]`."""

from __future__ import annotations

from ui import preload

# isort: split
import gc
import signal
import sys
import traceback
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from types import TracebackType

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication

from binder.errors import RingboundError
from binder.store.clock import Clock
from binder.store.shelf import Shelf
from ui.actions.installed import Installed
from ui.desk.stage import Stage
from ui.desk.window import Window
from ui.look import theme
from ui.session.memory import Memory
from ui.session.reader import Reader
from ui.session.session import Session
from ui.warm import Warm

preload.collect_again()

FIRST_SIZE = (1600, 1000)
USAGE = (
    "`python -m ui.app [SHELF]` opens a shelf, a folder of binders, in a window; without SHELF "
    "the one that was open last.\n"
)
OWN_FAULT = "Something went wrong here ({}). What you wrote is safe."


class Program:
    """The application and its one window; another shelf gets another window in its place."""

    def __init__(self, app: QApplication, memory: Memory, clock: Clock) -> None:
        self.app, self.memory, self.clock = app, memory, clock
        self.look = theme.Look(theme.load(memory.theme, memory.scale), app)
        theme.apply(app, self.look.theme)
        self.window: Window | None = None

    def open(self, path: Path) -> Window:
        """Open the shelf at `path` in the window."""
        before = self.window
        if before is not None:
            before.remember()
        session = Session(Shelf(path), self.clock)
        window = self.window = Window(session, self.look, self.memory)
        session.setParent(window)
        Installed(window)
        window.changing_shelf.connect(self.change)
        Reader(session, window)
        self._size(window)
        window.painted.connect(partial(Warm, session, window))
        window.start(self.memory.spot(path))
        window.show()
        if before is not None:
            before.close()
            before.session.close()
            before.deleteLater()
        self.memory.shelf = path
        return window

    def change(self, path: Path) -> None:
        """Open another shelf instead of this one; if that fails this one stays."""
        if self.window is None or self.window.guard(self.open, path):
            self.memory.save()

    def welcome(self) -> None:
        """Lay the welcome leaf on the open binder, once in a life."""
        from ui.desk.welcome import WelcomePage

        if self.window is not None:
            self.memory.welcomed = True
            page = WelcomePage(self.window.session, self.look)
            page.looked_round.connect(self._look_round)
            page.begun.connect(self.window.changing_shelf)
            self.window.lay_stage(Stage.WELCOME, page, None)
            page.focus_in()

    def _look_round(self, newest: str) -> None:
        window = self.window
        if window is None:
            return
        if newest:
            window.guard(window.session.open_leaf, newest)
        else:
            window.back_to_leaves()
        window.focus_leaf()

    def _size(self, window: Window) -> None:
        kept = self.memory.window
        if kept is None or not window.restoreGeometry(kept):
            room = QGuiApplication.primaryScreen().availableGeometry()
            window.resize(
                min(FIRST_SIZE[0], room.width() - 40), min(FIRST_SIZE[1], room.height() - 60)
            )

    def leave(self, *_signal: object) -> None:
        """End at once, with everything saved, as when the system shuts down."""
        if self.window is not None:
            self.window.remember()
        self.app.exit()

    def close(self) -> None:
        """Close the binders."""
        if self.window is not None:
            self.window.session.close()


def application() -> QApplication:
    """The application of this process, made where there is none yet."""
    held = QApplication.instance()
    return held if isinstance(held, QApplication) else QApplication(["ringbound"])


def main(arguments: Sequence[str] | None = None, painted: Callable[[], None] | None = None) -> int:
    """Run the program; returns its exit code. `painted` is called once the first leaf is seen."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    if len(given) > 1 or given[:1] in (["-h"], ["--help"]):
        asked = given[:1] in (["-h"], ["--help"])
        (sys.stdout if asked else sys.stderr).write(USAGE)
        return 0 if asked else 2
    gc.disable()  # until the first leaf is seen
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    app = application()
    app.setApplicationName("Ringbound")
    app.setDesktopFileName("ringbound")
    program = Program(app, Memory.of_user(), Clock())
    catch(program)
    signal.signal(signal.SIGTERM, program.leave)
    try:
        window = open_first(program, given)
    except RingboundError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    window.painted.connect(preload.collect_again)
    if painted is not None:
        window.painted.connect(painted)
    code = int(app.exec())
    program.close()
    return code


def open_first(program: Program, given: list[str]) -> Window:
    """The window of a start: on the shelf given, else the last one, else the sample's."""
    path = Path(given[0]) if given else program.memory.shelf
    if path is not None:
        return program.open(path)
    from ui.session.places import sample_shelf

    window = program.open(sample_shelf(program.clock.now()))
    if not program.memory.welcomed:
        program.welcome()
    return window


def catch(program: Program) -> None:
    """A fault of ours becomes a sentence; what was written is in the binder already."""

    def caught(
        kind: type[BaseException], error: BaseException, where: TracebackType | None
    ) -> None:
        traceback.print_exception(kind, error, where)
        if program.window is not None and isinstance(error, Exception):
            told = isinstance(error, RingboundError)
            program.window.say(str(error) if told else OWN_FAULT.format(error))

    sys.excepthook = caught


if __name__ == "__main__":
    raise SystemExit(main())
