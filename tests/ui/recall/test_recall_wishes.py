"""Choosing what recall asks: ticked, numbered, kept, refused with a sentence."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from binder.study.cards import words
from binder.study.recall.questions import Direction
from binder.study.recall.recall_wishes import USUAL, kept_wishes
from ui.actions.installed import actions_of
from ui.recall.recall_wishes import WishesDialog


@pytest.fixture
def dialog(qtbot, session, look):
    made = WishesDialog(session, look, lambda: made.told.append(1))
    made.told = []
    qtbot.addWidget(made)
    made.show()
    return made


def test_what_is_ticked_and_numbered_is_kept(qtbot, session, dialog):
    for one in (Direction.TITLE, Direction.SKY):
        qtbot.keyClick(dialog.ticks[one], Qt.Key.Key_Space)
    dialog.most.setFocus()
    dialog.most.selectAll()
    qtbot.keyClicks(dialog.most, "12")
    dialog.minutes.selectAll()
    qtbot.keyClicks(dialog.minutes, "10")
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    wished = kept_wishes(session.shelf)
    assert wished.directions == USUAL.directions - {Direction.TITLE, Direction.SKY}
    assert (wished.most, wished.minutes) == (12, 10)
    assert dialog.told == [1]


def test_nothing_ticked_is_said_and_nothing_kept(qtbot, session, dialog):
    for tick in dialog.ticks.values():
        qtbot.keyClick(tick, Qt.Key.Key_Space)
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert dialog.isVisible()
    assert "Tick at least one" in dialog.wrong.text()
    assert kept_wishes(session.shelf) == USUAL


def test_a_round_without_end(qtbot, session, dialog):
    dialog.minutes.setValue(0)
    assert dialog.minutes.text() == "until nothing is left"
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert kept_wishes(session.shelf).minutes == 0


def test_an_open_round_begins_again_by_it(qtbot, window):
    for key in ("major-00", "major-01"):
        words.write_words(*window.session.shelf.card_leaf(key), "upright", f"Words about {key}.")
    window.actions_by_name["recall"].trigger()
    assert window.staged("recall")
    before = actions_of(window).round.question.key.direction

    def choose():
        dialog = QApplication.activeModalWidget()
        for one, tick in dialog.ticks.items():
            tick.setChecked(one is Direction.SKY)
        qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)

    from PySide6.QtCore import QTimer

    QTimer.singleShot(50, choose)
    window.actions_by_name["recall_wishes"].trigger()
    assert before == "meaning"
    assert actions_of(window).round.question.key.direction == "sky"
