"""Widgets under test stand in a real application that needs no display."""

import gc
import os
import shutil
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QGuiApplication

from binder.store.clock import OtherDay

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def deleted(qapp):
    """What Qt was told to delete goes between tests: the next theme would still dress it. A window
    left in sight, as by a test that failed half way, or a button left pressed would take the next
    one's pointer.
    """
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()
    gc.freeze()
    yield
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    seen = [one for one in QGuiApplication.topLevelWindows() if one.isVisible()]
    for one in seen:
        one.close()
    assert not seen
    assert QGuiApplication.mouseButtons() == Qt.MouseButton.NoButton


@pytest.fixture
def look(qapp):
    """The day theme, applied to the application."""
    from ui.look import theme

    made = theme.Look(theme.load("day"))
    theme.apply(qapp, made.theme)
    yield made
    made.deleteLater()


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory):
    """The sample shelf, built once; copy it before writing on it."""
    from binder.carry.building import build
    from binder.resources import samples

    folder = tmp_path_factory.mktemp("sample")
    build(samples(), folder).close()
    return folder


@pytest.fixture
def sample_shelf(sample_folder, tmp_path):
    """A copy of the sample shelf, open."""
    from binder.store.shelf import Shelf

    made = Shelf(Path(shutil.copytree(sample_folder, tmp_path / "sample")))
    yield made
    made.close()


@pytest.fixture
def session(sample_shelf):
    """A session on the sample shelf, on the day its diary ends."""
    from ui.session.session import Session

    made = Session(sample_shelf, OtherDay(date(2026, 11, 25)))
    yield made
    made.deleteLater()


@pytest.fixture
def lay(qtbot, look):
    """Lays a page in a window of its own and shows a spot on it: lay(page, spot, 524, 850)."""
    from PySide6.QtWidgets import QWidget

    windows = []

    def laid(page, spot, width=524, height=850):
        window = QWidget()
        windows.append(window)
        qtbot.addWidget(window)
        window.resize(width, height)
        page.setParent(window)
        page.resize(width, height)
        page.show_spot(spot)
        with qtbot.waitActive(window):
            window.show()
            window.activateWindow()
        return page

    return laid


@pytest.fixture
def program(qapp, tmp_path):
    """The program with a memory of its own, on the day the sample's diary ends."""
    from ui.app import Program
    from ui.session.memory import Memory

    made = Program(qapp, Memory(tmp_path / "desk.ini"), OtherDay(date(2026, 11, 25)))
    yield made
    if made.window is not None:
        made.window.close()
        made.window.session.close()
        made.window.deleteLater()


@pytest.fixture
def window(program, sample_folder, tmp_path, qtbot):
    """The window over a copy of the sample shelf, as large as in the design."""
    folder = Path(shutil.copytree(sample_folder, tmp_path / "sample copy"))
    made = program.open(folder)
    made.resize(1600, 1000)
    with qtbot.waitActive(made):
        made.activateWindow()
    qtbot.waitUntil(lambda: len(made.slips.slips()) > 0)
    return made
