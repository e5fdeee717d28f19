"""Earlier versions: listed, compared, brought back, all by key."""

import pytest
from PySide6.QtCore import Qt

from binder.errors import OwnFault
from binder.store.schema import Version
from binder.study.cards import words
from binder.study.leaves import history, leaves
from tests.ui.leaf_fixtures import plain, session_on
from ui.leaves.drawer.earlier import EarlierDialog


@pytest.fixture
def session(course_shelf, qapp):
    return session_on(course_shelf)


@pytest.fixture
def opened(session, look, qtbot):
    def made(binder, uid):
        dialog = EarlierDialog(session, look, leaves.leaf(binder, uid))
        qtbot.addWidget(dialog)
        with qtbot.waitActive(dialog):
            dialog.show()
            dialog.activateWindow()
        return dialog

    return made


def grown(binder, uid, *texts):
    for text in texts:
        seen = 0  # as if another window had written meanwhile, so that each text is kept
        leaves.write(binder, uid, title="A leaf", text=text, seen=seen)


def test_an_earlier_text_is_marked_and_brought_back_by_key(course_shelf, opened, qtbot):
    binder, uid = plain(course_shelf, "The purse is heavy.")
    grown(binder, uid, "The purse is light.", "The purse is light again.")
    dialog = opened(binder, uid)
    assert dialog.model.rowCount() == 3
    assert not dialog.what.isVisible()
    qtbot.keyClick(dialog.list, Qt.Key.Key_End)
    assert "line-through" in dialog.old.toHtml()
    assert "heavy" in dialog.old.toPlainText()
    assert "light again" in dialog.new.toPlainText()
    qtbot.keyClick(dialog.list, Qt.Key.Key_Return)
    assert leaves.leaf(binder, uid).text == "The purse is heavy."
    assert dialog.model.rowCount() == 4


def test_own_words_of_each_way_have_a_history(course_shelf, opened, qtbot):
    binder, uid = course_shelf.card_leaf("major-17")
    words.write_words(binder, uid, words.UPRIGHT, "Hope.", at="2026-03-01T10:00")
    words.write_words(binder, uid, words.UPRIGHT, "Hope run thin.", at="2026-09-01T10:00")
    dialog = opened(binder, uid)
    assert dialog.model.stringList() == [
        "Now, since 1 September 2026, 10:00", "1 March 2026, 10:00",
    ]  # fmt: skip
    qtbot.mouseClick(dialog.back, Qt.MouseButton.LeftButton)
    assert words.current(words.history(binder, uid))["upright"].text == "Hope."
    assert len(words.history(binder, uid)) == 3
    dialog.what.setCurrentIndex(1)
    assert dialog.quiet.isVisible()
    assert not dialog.back.isEnabled()


def test_two_earlier_ones_are_compared(course_shelf, opened):
    binder, uid = plain(course_shelf, "one")
    grown(binder, uid, "two", "three")
    dialog = opened(binder, uid)
    dialog.against.setCurrentIndex(2)
    assert "two" in dialog.old.toPlainText()
    assert "one" in dialog.new.toPlainText()


def test_a_version_that_cannot_be_read_is_said(course_shelf, session):
    binder, uid = plain(course_shelf, "one")
    grown(binder, uid, "two")
    row = binder.first(Version.select())
    with binder.change("Spoil") as change:
        change.edit(Version, row.uid, text=b"xx")
    with pytest.raises(OwnFault, match="cannot be read; the leaf is safe"):
        history.of_text(binder, uid)
