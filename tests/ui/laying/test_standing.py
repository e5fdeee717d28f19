"""Beside every new question stands where people help, whether its words are known or not."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.ui.driving import CTRL, K, key
from ui.actions.installed import actions_of


@pytest.mark.parametrize("question", ["", "What shall I plant?", "I want to die"])
def test_it_stands_there_whatever_is_asked(desk, question):
    desk.type(question)
    QApplication.processEvents()
    line = desk.head.standing
    assert line.isVisible()
    assert "people help now" in line.text()
    assert line.y() > desk.head.question.y()
    assert not line.wrong


@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_no_word_of_it_is_cut_off(desk, look, scale):
    desk.host.resize(1100, 700)
    look.set_scale(scale)
    QApplication.processEvents()
    line = desk.head.standing
    assert line.height() >= line.heightForWidth(line.width())


def test_tab_comes_to_it_after_the_cards_and_enter_follows(desk, qtbot):
    desk.line.setFocus()
    desk.key(Qt.Key.Key_Tab)
    while desk.host.focusWidget() is not desk.head.standing:
        assert desk.host.focusWidget() is not desk.line
        desk.key(Qt.Key.Key_Tab)
    with qtbot.waitSignal(desk.entry.help_asked):
        desk.key(Qt.Key.Key_Return)


def test_its_leaf_opens_and_the_question_is_put_by(window):
    key(window, K.Key_L, CTRL)
    QTest.keyClicks(window.focusWidget(), "Where do I go?")
    entry = actions_of(window).entry
    entry.left.head.standing.linkActivated.emit("help")
    book = actions_of(window).book
    assert window.staged("handbook")
    assert book.right.heading.accessibleName() == "People help now"
    assert "emergency services" in book.right.text.toPlainText()
    key(window, K.Key_Escape)
    key(window, K.Key_L, CTRL)
    assert entry.left.head.question.toPlainText() == "Where do I go?"


def test_the_menu_opens_it_too(window):
    actions_of(window).who_helps()
    assert actions_of(window).book.right.heading.accessibleName() == "People help now"
