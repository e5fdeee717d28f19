"""A card leaf that lies open for a while is read; one that is only turned past is not."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from binder.store.clock import OtherDay
from binder.study.overview.progress import read_in
from ui.session.reader import Reader
from ui.session.session import Session


@pytest.fixture
def desk(course_shelf, qtbot):
    session, window = Session(course_shelf, OtherDay(date(2026, 3, 2))), QWidget()
    qtbot.addWidget(window)
    with qtbot.waitActive(window):
        window.show()
        window.activateWindow()
    reader = Reader(session, window)
    reader.timer.setInterval(60)
    return session, window, reader


def foundations(session):
    return session.shelf.binder("Foundations")


def test_a_leaf_left_open_is_read(desk, qtbot):
    session, _, _ = desk
    session.open_leaf(session.shelf.card_leaf("major-17")[1])
    qtbot.waitUntil(lambda: "major-17" in read_in(foundations(session)))
    assert foundations(session).gate.undo_label() is None  # no step of undo


def test_the_leaf_that_faces_counts_too(desk, qtbot):
    session, _, _ = desk
    session.open_binder(foundations(session).uid)
    session.face_card("wands-03")
    qtbot.waitUntil(lambda: "wands-03" in read_in(foundations(session)))


def test_a_leaf_turned_past_is_not_read(desk, qtbot):
    session, _, reader = desk
    reader.timer.setInterval(300)
    session.open_leaf(session.shelf.card_leaf("major-17")[1])
    QApplication.processEvents()
    session.open_leaf(session.shelf.card_leaf("major-03")[1])
    qtbot.waitUntil(lambda: "major-03" in read_in(foundations(session)))
    assert "major-17" not in read_in(foundations(session))


def test_what_was_read_before_is_not_noted_again(desk, qtbot):
    session, _, reader = desk
    uid = session.shelf.card_leaf("major-17")[1]
    session.open_leaf(uid)
    qtbot.waitUntil(lambda: "major-17" in read_in(foundations(session)))
    session.open_leaf(session.shelf.card_leaf("major-18")[1])
    qtbot.waitUntil(lambda: "major-18" in read_in(foundations(session)))
    noted = []
    foundations(session).listen(noted.append)
    session.back()
    qtbot.waitUntil(lambda: not reader.timer.isActive())
    assert not noted


def test_nothing_is_read_behind_another_window(desk, qtbot):
    session, window, reader = desk
    other = QWidget(None, Qt.WindowType.Window)
    qtbot.addWidget(other)
    with qtbot.waitActive(other):
        other.show()
        other.activateWindow()
    session.open_leaf(session.shelf.card_leaf("major-17")[1])
    for _ in range(2):
        with qtbot.waitSignal(reader.timer.timeout):
            pass
    assert read_in(foundations(session)) == []
    with qtbot.waitActive(window):
        window.activateWindow()
    qtbot.waitUntil(lambda: "major-17" in read_in(foundations(session)))
