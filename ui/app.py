"""Starts the window: `python -m ui.app [SHELF or BINDER]`."""

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

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QFileOpenEvent, QGuiApplication, QIcon
from PySide6.QtWidgets import QApplication

from binder.errors import CanMend, RingboundError
from binder.resources import resource
from binder.store.clock import Clock
from binder.store.shelf import Shelf, folder_of, named_as_binder
from binder.store.wiping import WIPE
from ui.actions.installed import Installed
from ui.desk.stage import Stage
from ui.desk.window import Window
from ui.look import theme
from ui.session.copying import Copying, folder
from ui.session.memory import Memory
from ui.session.reader import Reader
from ui.session.session import Session
from ui.session.trail import Show, Spot
from ui.warm import Warm

preload.collect_again()

FIRST_SIZE = (1600, 1000)
USAGE = (
    "`python -m ui.app [SHELF]` opens a shelf, a folder of binders, in a window; without SHELF "
    "the one that was open last, and at a binder if its file is given.\n"
)
OWN_FAULT = "Something went wrong here ({}). What you wrote is safe."
OTHER_SHELF = (
    "This is the shelf in “{}”, since that binder lies there; next time your own shelf opens again."
)


class Program:
    """The application and its one window; another shelf gets another window in its place."""

    def __init__(self, app: QApplication, memory: Memory, clock: Clock) -> None:
        self.app, self.memory, self.clock = app, memory, clock
        self.look = theme.Look(theme.load(memory.theme, memory.scale), app)
        theme.apply(app, self.look.theme)
        self.window: Window | None = None

    def open(self, path: Path, file: Path | None = None) -> Window:
        """Open the shelf at `path` in the window, at the binder of `file` if one is asked for.

        For the sake of one file the user's own shelf is not forgotten.
        """
        before = self.window
        if before is not None:
            before.remember()
        session = Session(Shelf(path), self.clock)
        window = self.window = Window(session, self.look, self.memory)
        session.setParent(window)
        session.sheets = self.memory.sheets(path)
        Installed(window)
        window.changing_shelf.connect(self.change)
        Reader(session, window)
        Copying(session, window)
        self._size(window)
        window.painted.connect(partial(Warm, session, window))
        window.start(self._spot(session.shelf, file))
        window.show()
        if any(WIPE in binder.info for binder in session.shelf.binders):
            from binder.study.overview.gone import wipe_due  # hardly ever due at an opening

            for sentence in wipe_due(session.shelf, folder(session.shelf), session.today):
                window.say(sentence)
        if before is not None:
            before.close()
            before.session.close()
            before.deleteLater()
        if file is None or self.memory.shelf is None:
            self.memory.shelf = path
        return window

    def _spot(self, shelf: Shelf, file: Path | None) -> Spot | None:
        """Where to open a shelf: where it was left, unless another binder is asked for."""
        left = self.memory.spot(shelf.path)
        asked = next((b for b in shelf.binders if file and b.path.samefile(file)), None)
        if asked is None or (left is not None and left.binder == asked.uid):
            return left
        return Spot(Show.CONTENTS, asked.uid)

    def open_file(self, file: Path) -> Window:
        """Open a binder's file, and with it the shelf it stands on. Raises CanMend."""
        folder = folder_of(file.resolve())
        window = self.window
        if window is not None and window.session.shelf.path.resolve() == folder:
            spot = self._spot(window.session.shelf, file)
            if spot is not None and spot.binder != window.session.left.binder:
                window.session.open_binder(spot.binder)
            return window
        window = self.open(folder, file)
        if self.memory.shelf is not None and self.memory.shelf.resolve() != folder:
            window.painted.connect(partial(window.say, OTHER_SHELF.format(folder.name)))
        return window

    def asked(self, name: str) -> None:
        """Open a file that the system asks the running program for, or say why not."""
        if self.window is not None and self.window.guard(self.open_file, Path(name)):
            self.window.activateWindow()

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


class Application(QApplication):
    """Passes on which file the system wants opened; macOS asks the running program for it."""

    asked = Signal(str)

    def event(self, event: QEvent) -> bool:
        """Hear of a file."""
        if isinstance(event, QFileOpenEvent):
            self.asked.emit(event.file())
            return True
        return super().event(event)


def application() -> QApplication:
    """The application of this process, made where there is none yet."""
    held = QApplication.instance()
    return held if isinstance(held, QApplication) else Application(["ringbound"])


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
    app.setWindowIcon(QIcon(str(resource("desktop", "ringbound.svg"))))
    program = Program(app, Memory.of_user(), Clock())
    catch(program)
    if isinstance(app, Application):
        app.asked.connect(program.asked)
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
    """The window of a start: on the shelf given, else the last one, else the sample's.

    Whoever opens a file sees no terminal, so what is wrong with it is said in the window.
    """
    path = Path(given[0]) if given else None
    if path is None or not named_as_binder(path):
        return usual(program) if path is None else program.open(path)
    try:
        return program.open_file(path)
    except CanMend as error:
        window = usual(program)
        window.painted.connect(partial(window.say, str(error)))
        return window


def usual(program: Program) -> Window:
    """The window on the shelf that was open last, else on the sample's."""
    path = program.memory.shelf
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
