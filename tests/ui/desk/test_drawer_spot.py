"""What is dragged into the drawer is set aside; an empty tab says what belongs there."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.study.course import course
from binder.study.kinds import TAB_KINDS
from binder.study.leaves import leaves, tabs
from tests.ui.driving import answering, gives_up, presses, settle, tab_of
from ui.actions.installed import Installed, actions_of
from ui.kit.strip.strip import LEAF_MIME
from ui.leaves.contents import empty


@pytest.fixture
def spot(window):
    return window.findChild(Installed).drawer_spot


def dropped(spot, uid):
    data = QMimeData()
    data.setData(LEAF_MIME, uid.encode())
    at, none = QPointF(spot.rect().center()), Qt.KeyboardModifier.NoModifier
    move, left = Qt.DropAction.MoveAction, Qt.MouseButton.LeftButton
    enter = QDragEnterEvent(at.toPoint(), move, data, left, none)
    QApplication.sendEvent(spot, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(spot, QDropEvent(at, move, data, left, none))
    settle()


def carry(spot, piece, on):
    """Drag a piece of a strip a little, then let it go over the drawer, or beside it."""
    start = piece.rect().center()
    QTest.mousePress(piece, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(piece, start + QPoint(0, 30))
    settle()
    assert spot.isVisible()
    over = spot.mapToGlobal(spot.rect().center() if on else QPoint(400, -200))
    QTest.mouseMove(piece, piece.mapFromGlobal(over))
    QTest.mouseRelease(piece, Qt.MouseButton.LeftButton, pos=piece.mapFromGlobal(over))
    settle()


def test_a_leaf_dropped_on_the_drawer_is_set_aside(window, spot):
    binder = window.session.binder
    tab = tab_of(window, "Clippings")
    window.session.open_tab(binder, tab)
    entry = leaves.contents(binder, tab)[0]
    assert not spot.isVisible()
    window.session.carrying.emit(True)
    assert spot.isVisible()
    dropped(spot, entry.uid)
    assert not spot.isVisible()
    assert entry.uid not in [one.uid for one in leaves.contents(binder, tab)]
    assert "drawer" in window.said.text()
    window.session.undo()
    assert entry.uid in [one.uid for one in leaves.contents(binder, tab)]


def test_a_tab_carried_into_the_drawer_is_set_aside(window, spot):
    binder = window.session.binder
    tab = tab_of(window, "Clippings")
    piece = window.cover.dividers.button(tab.uid)
    carry(spot, piece, on=True)
    assert not spot.isVisible()
    assert tab.uid not in [one.uid for one in tabs.tabs(binder)]
    window.session.undo()
    assert tab.uid in [one.uid for one in tabs.tabs(binder)]


def test_a_tab_let_go_elsewhere_stays(window, spot):
    binder = window.session.binder
    tab = tab_of(window, "Clippings")
    before = [one.uid for one in tabs.tabs(binder)]
    carry(spot, window.cover.dividers.button(tab.uid), on=False)
    assert not spot.isVisible()
    assert sorted(one.uid for one in tabs.tabs(binder)) == sorted(before)


def test_a_binder_carried_into_the_drawer_is_asked_about(window, spot):
    binder = window.session.shelf.binder("Mastery")
    answering(presses("Leave it"))
    carry(spot, window.spines.button(binder.uid), on=True)
    assert binder in window.session.shelf.binders
    answering(presses("Set it aside"))
    carry(spot, window.spines.button(binder.uid), on=True)
    assert binder.uid not in [one.uid for one in window.session.shelf.binders]


@pytest.mark.parametrize("kind", TAB_KINDS)
def test_an_empty_tab_of_each_kind_says_what_belongs_there_and_offers_it(window, kind):
    binder = window.session.shelf.binder("Foundations")
    window.session.open_binder(binder.uid)
    uid = tabs.add_tab(binder, "Empty for now", kind)
    window.session.open_tab(binder, tabs.tab(binder, uid))
    settle()
    page = window.cover.leaf("left")
    if page.model.count:
        assert not page.quiet.isVisible()
        return
    assert page.quiet.isVisible()
    assert "Ctrl+" in page.quiet.toPlainText()
    assert page.quiet.hasFocus() or page.isAncestorOf(QApplication.focusWidget())
    assert page.quiet.height() >= page.quiet.document().size().height() - 1


def test_what_an_empty_tab_offers_is_begun_by_its_link(window):
    binder = window.session.shelf.binder("Foundations")
    window.session.open_binder(binder.uid)
    uid = tabs.add_tab(binder, "Odds and ends", "plain")
    tab = tabs.tab(binder, uid)
    window.session.open_tab(binder, tab)
    settle()
    page = window.cover.leaf("left")
    assert 'href="begin:leaf"' in empty.words(tab.kind)
    page.followed.emit("begin:leaf")
    settle()
    assert [one.title for one in leaves.contents(binder, tab)] == ["New leaf"]
    page.followed.emit("begin:anything else")


def test_a_finished_level_is_taken_up_again_only_when_that_is_meant(window):
    binder = window.session.shelf.binder("Foundations")
    window.session.open_binder(binder.uid)
    with binder.change("Finish") as step:
        step.put_info(course.FINISHED, window.session.today.isoformat())
    answering(gives_up)
    actions_of(window).finish_level()
    assert course.finished(binder)
    answering(presses("Study it again"))
    actions_of(window).finish_level()
    assert not course.finished(binder)
