"""Small questions, answered by keys."""

from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog, QPushButton, QWidget

from tests.ui.driving import K, answering
from ui.kit.forms import asking


def typed(words, end=K.Key_Return):
    def act(dialog):
        QTest.keyClicks(dialog.focusWidget(), words)
        QTest.keyClick(dialog.focusWidget(), end)

    return act


def asked(qtbot, act, ask):
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    answering(act)
    said = ask(window)
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert not window.findChildren(QDialog), "the dialog is gone once it is answered"
    return said


def test_a_line_is_typed_and_kept(qtbot, look):
    said = asked(qtbot, typed("  Kiln "), lambda w: asking.line(w, "New tab", "Name:"))
    assert said == "Kiln"


def test_nothing_typed_or_left_is_no_line(qtbot, look):
    assert asked(qtbot, typed("  "), lambda w: asking.line(w, "New tab", "Name:")) is None
    left = typed("Kiln", K.Key_Escape)
    assert asked(qtbot, left, lambda w: asking.line(w, "New tab", "Name:")) is None


def test_one_of_a_list_is_chosen_by_key(qtbot, look):
    def down(dialog):
        QTest.keyClick(dialog.focusWidget(), K.Key_Down)
        QTest.keyClick(dialog, K.Key_Return)

    ways = ["Plain", "Readings", "Sources"]
    assert asked(qtbot, down, lambda w: asking.choice(w, "Tab", "Holds:", ways, 1)) == 2


def test_both_answers_are_named(qtbot, look):
    words = []

    def look_at(dialog):
        words.extend(button.text() for button in dialog.findChildren(QPushButton))
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    assert asked(qtbot, look_at, lambda w: asking.sure(w, "T", "Sure?", "Do it", "Wait")) is False
    asked(qtbot, look_at, lambda w: asking.line(w, "T", "Name:"))
    assert words == ["Do it", "Wait", "Keep", "Leave it"]
