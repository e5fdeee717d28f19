"""Marking the picture of a card, with real clicks, drags and keys."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from binder.study.cards import imagery
from binder.study.decks.shown_faces import Picture
from tests.ui.driving import CTRL, SHIFT, K, click, key, point, settle
from ui.leaves.card.mark_dialog import MarkDialog
from ui.leaves.card.mark_paint import centre
from ui.look import theme

DRAWN = (Picture("", "Drawn face"),)
BLANK = "cups-02"


@pytest.fixture
def home(session):
    """Binder and uid of a leaf without marks."""
    return session.shelf.card_leaf(BLANK)


@pytest.fixture
def dialog(session, look, home, qtbot):
    view = session.leaf_of(session.spot_of(home[1]))
    made = MarkDialog(session, look, view, DRAWN)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def at(dialog, x, y):
    card = dialog.board.card_rect()
    return QPointF(card.x() + x * card.width(), card.y() + y * card.height()).toPoint()


def seen(home):
    return [(m.number, round(m.x, 2), round(m.y, 2), m.text) for m in imagery.marks(*home)]


def two_marks(dialog, home):
    for x, y, words in ((0.25, 0.25, "A cup"), (0.75, 0.5, "Another")):
        click(dialog.board, at(dialog, x, y))
        QTest.keyClicks(dialog.focusWidget(), words)
    dialog.keep()
    assert [text for *_, text in seen(home)] == ["A cup", "Another"]


def test_a_click_sets_a_mark_and_its_words_are_written(dialog, home, qtbot):
    click(dialog.board, at(dialog, 0.25, 0.5))
    assert dialog.focusWidget() is next(iter(dialog.words.fields.values()))
    QTest.keyClicks(dialog.focusWidget(), "A small fish")
    qtbot.waitUntil(lambda: seen(home) == [(1, 0.25, 0.5, "A small fish")], timeout=2000)


def test_enter_goes_on_to_the_next_and_then_to_the_picture(dialog, home):
    two_marks(dialog, home)
    first, second = dialog.words.fields.values()
    first.setFocus()
    key(dialog, K.Key_Return)
    assert second.hasFocus()
    assert dialog.board.lit == imagery.marks(*home)[1].uid
    key(dialog, K.Key_Return)
    assert dialog.board.hasFocus()


def test_a_mark_is_dragged(dialog, home):
    two_marks(dialog, home)
    start, end = at(dialog, 0.25, 0.25), at(dialog, 0.5, 0.75)
    QTest.mousePress(dialog.board, Qt.MouseButton.LeftButton, pos=start)
    for step in range(1, 6):
        QTest.mouseMove(dialog.board, start + (end - start) * step / 5)
        settle(1)
    QTest.mouseRelease(dialog.board, Qt.MouseButton.LeftButton, pos=end)
    settle()
    assert [one[:3] for one in seen(home)] == [(1, 0.5, 0.75), (2, 0.75, 0.5)]
    assert len(imagery.marks(*home)) == 2


def test_no_mark_leaves_the_picture(dialog, home):
    two_marks(dialog, home)
    QTest.mousePress(dialog.board, Qt.MouseButton.LeftButton, pos=at(dialog, 0.25, 0.25))
    QTest.mouseMove(dialog.board, QPoint(-80, 5000))
    QTest.mouseRelease(dialog.board, Qt.MouseButton.LeftButton, pos=QPoint(-80, 5000))
    assert seen(home)[0][:3] == (1, 0.0, 1.0)


def test_all_of_it_by_key(dialog, home):
    dialog.board.setFocus()
    key(dialog, K.Key_Space)
    QTest.keyClicks(dialog.focusWidget(), "In the middle")
    key(dialog, K.Key_Return)
    assert dialog.board.hasFocus()
    for _ in range(3):
        key(dialog, K.Key_Right)
    key(dialog, K.Key_Up, SHIFT)
    assert seen(home) == [(1, 0.53, 0.45, "In the middle")]
    key(dialog, K.Key_Insert)
    dialog.board.setFocus()
    key(dialog, K.Key_PageUp)
    assert dialog.board.current.number == 1
    key(dialog, K.Key_PageUp)
    assert dialog.board.current.number == 2
    key(dialog, K.Key_Delete)
    assert len(seen(home)) == 1
    key(dialog, K.Key_PageDown)
    key(dialog, K.Key_Return)
    assert dialog.focusWidget() in dialog.words.fields.values()


def test_tab_walks_picture_words_and_buttons(dialog, home):
    two_marks(dialog, home)
    dialog.board.setFocus()
    walked = []
    for _ in range(8):
        key(dialog, K.Key_Tab)
        walked.append(dialog.focusWidget())
    assert set(dialog.words.fields.values()) <= set(walked)
    assert {dialog.add, dialog.finish} <= set(walked)


def test_what_was_done_is_taken_back_step_by_step(dialog, home):
    two_marks(dialog, home)
    dialog.board.setFocus()
    key(dialog, K.Key_PageDown)
    key(dialog, K.Key_PageDown)
    chosen = dialog.board.current.number
    for _ in range(4):
        key(dialog, K.Key_Left)
    moved = seen(home)
    key(dialog, K.Key_Z, CTRL)
    assert [one[:3] for one in seen(home)] == [(1, 0.25, 0.25), (2, 0.75, 0.5)]
    assert moved[chosen - 1][1] == pytest.approx(seen(home)[chosen - 1][1] - 0.04)
    click(dialog.back)
    assert seen(home)[1][3] == ""
    click(dialog.back)
    click(dialog.back)
    click(dialog.back)
    assert seen(home) == []
    assert not dialog.back.isEnabled()


def test_nothing_from_before_is_taken_back(dialog, home, session):
    imagery.mark_spot(*home, 0.5, 0.5, "From before")
    settle()
    assert len(dialog.words.fields) == 1
    dialog.board.setFocus()
    key(dialog, K.Key_Z, CTRL)
    assert len(seen(home)) == 1


def test_words_are_kept_however_the_window_is_shut(dialog, home):
    click(dialog.board, at(dialog, 0.25, 0.5))
    QTest.keyClicks(dialog.focusWidget(), "A fish")
    QTest.keyClick(dialog, K.Key_Escape)
    assert seen(home)[0][3] == "A fish"


def test_a_mark_under_the_pointer_says_what_it_is(dialog, home, qtbot):
    two_marks(dialog, home)
    mark = dialog.board.marks[0]
    point(dialog.board, centre(mark, dialog.board.card_rect()).toPoint())
    qtbot.waitUntil(lambda: dialog.board.toolTip() == "A cup")


def test_too_many_marks_are_told(dialog, home, monkeypatch):
    monkeypatch.setattr(imagery, "MOST", 1)
    click(dialog.board, at(dialog, 0.25, 0.25))
    click(dialog.board, at(dialog, 0.75, 0.75))
    assert "takes 1 marks" in dialog.hint.text()
    assert len(seen(home)) == 1


def test_it_fits_a_low_window_at_every_size(session, home, qtbot):
    view = session.leaf_of(session.spot_of(home[1]))
    parent = QWidget()
    qtbot.addWidget(parent)
    parent.resize(1100, 700)
    large = theme.Look(theme.load("lamp", 1.5))
    theme.apply(QApplication.instance(), large.theme)
    made = MarkDialog(session, large, view, DRAWN, "", parent)
    made.show()
    assert made.height() <= 700
    assert made.width() <= 1100
    made.close()


def test_words_not_written_yet_outlast_what_another_window_does(dialog, home):
    two_marks(dialog, home)
    first, second = dialog.words.fields.values()
    second.setFocus()
    QTest.keyClicks(second, " one")
    imagery.write_mark(home[0], imagery.marks(*home)[0].uid, "Changed elsewhere")
    settle()
    assert (first.toPlainText(), second.toPlainText()) == ("Changed elsewhere", "Another one")
    dialog.keep()
    assert [text for *_, text in seen(home)] == ["Changed elsewhere", "Another one"]


def test_words_that_cannot_be_written_are_put_by(dialog, home, session, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    said = []
    session.said.connect(said.append)
    click(dialog.board, at(dialog, 0.25, 0.5))
    QTest.keyClicks(dialog.focusWidget(), "A fish")
    home[0].writable = False
    QTest.keyClick(dialog, K.Key_Escape)
    home[0].writable = True
    assert "can be read but not written" in said[-1]
    assert [path.read_text() for path in tmp_path.rglob("*.unsaved.md")] == ["A fish"]
