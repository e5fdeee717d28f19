"""Copies of earlier days: made beside the window, looked into, brought back from."""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from binder.store import copies
from binder.study.leaves import leaves, tabs
from tests.ui.driving import click, settle
from ui.dialogs.older_dialog import OlderDialog
from ui.session.copying import Copying, folder

DAY = date(2026, 11, 20)


@pytest.fixture
def practice(session):
    """A copy of the twentieth, since when one leaf was written on and one removed."""
    binder = session.shelf.binder("Practice")
    copies.make(binder, folder(session.shelf), DAY)
    notes = leaves.contents(binder, tabs.tab(binder, "Clippings"))
    leaves.write(binder, notes[0].uid, title=notes[0].title, text="Otherwise now.")
    leaves.set_aside(binder, notes[1].uid)
    session.open_binder(binder.uid)
    return binder


@pytest.fixture
def dialog(session, look, qtbot, practice):
    made = OlderDialog(session, look)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    return made


def rows(dialog):
    found = []
    for at in range(dialog.tree.topLevelItemCount()):
        top = dialog.tree.topLevelItem(at)
        found += [(top.text(0), top.child(n).text(0), top.child(n).text(1))
                  for n in range(top.childCount())]  # fmt: skip
    return found


def answer(words):
    def press():
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        asked.append(box.text())
        next(b for b in box.buttons() if b.text().replace("&", "") == words).click()

    asked = []
    QTimer.singleShot(50, press)
    return asked


def test_it_says_what_is_otherwise_and_what_a_leaf_said(dialog):
    assert [since for _, _, since in rows(dialog)] == ["otherwise today", "in the drawer"]
    assert {tab for tab, _, _ in rows(dialog)} == {"Clippings"}
    assert dialog.hint.text() == "2 leaves of 59 otherwise today."
    said = dialog.said.toPlainText()
    assert said
    assert "Otherwise now" not in said
    assert "Copies" in dialog.where.text()


def test_all_leaves_can_be_looked_at(dialog, qtbot):
    dialog.only.setFocus()
    qtbot.keyClick(dialog.only, Qt.Key.Key_Space)
    assert len(rows(dialog)) == 59
    assert "as today" in {since for _, _, since in rows(dialog)}


def test_a_leaf_comes_back_beside_what_stands_and_lies_open(dialog, session, practice):
    click(dialog.leaf)
    view = session.leaf_of(session.left)
    assert view.title.endswith(", as on 20 November 2026")
    assert "Otherwise now" not in view.text
    assert view.title in dialog.hint.text()
    session.undo()
    assert not any(e.title == view.title for e in leaves.contents(
        practice, tabs.tab(practice, "Clippings")))  # fmt: skip


def test_a_tab_comes_back(dialog, practice):
    before = len(leaves.contents(practice, tabs.tab(practice, "Clippings")))
    click(dialog.tab)
    assert dialog.hint.text() == "1 leaf came back behind Clippings."
    assert len(leaves.contents(practice, tabs.tab(practice, "Clippings"))) == before + 1


def test_the_binder_comes_back_after_a_question(dialog, session, practice):
    asked = answer("Bring it back")
    click(dialog.whole)
    assert "kept as a copy first" in asked[0]
    assert rows(dialog) == []
    titles = [dialog.choice.itemText(n) for n in range(dialog.choice.count())]
    assert len(titles) == 2
    assert any("before an older one came back" in title for title in titles)
    notes = leaves.contents(practice, tabs.tab(practice, "Clippings"))
    assert "Otherwise now" not in leaves.leaf(practice, notes[0].uid).text


def test_thinking_better_of_it_changes_nothing(dialog, practice):
    answer("Leave it")
    click(dialog.whole)
    assert dialog.choice.count() == 1
    notes = leaves.contents(practice, tabs.tab(practice, "Clippings"))
    assert leaves.leaf(practice, notes[0].uid).text == "Otherwise now."


def test_without_a_copy_it_says_when_there_will_be_one(session, look, qtbot):
    made = OlderDialog(session, look)
    qtbot.addWidget(made)
    made.show()
    assert made.where.text().startswith("There is no copy yet.")
    assert not made.leaf.isEnabled()
    assert not made.whole.isEnabled()


def test_another_folder_is_chosen_and_remembered(dialog, session, tmp_path):
    place = tmp_path / "another disk"
    place.mkdir()

    def choose():
        asking = QApplication.activeModalWidget()
        assert isinstance(asking, QFileDialog)
        asking.setDirectory(str(place))
        asking.done(1)

    QTimer.singleShot(100, choose)
    click(dialog.elsewhere)
    assert folder(session.shelf) == place
    assert str(place) in dialog.where.text()


def test_a_copy_of_each_binder_is_kept_once_a_day(session, qtbot):
    copying = Copying(session, session)
    for _ in range(2):
        with qtbot.waitSignal(copying.job.done, timeout=30_000) as done:
            copying.look()
        assert done.args == [[]]
        made = copies.kept(folder(session.shelf))
        assert len(made) == len(session.shelf.binders)
        assert {one.day for one in made} == {date(2026, 11, 25)}


def test_what_cannot_be_copied_is_said_once_a_day(session, qtbot):
    Path(folder(session.shelf)).write_text("no folder")
    said = []
    session.said.connect(said.append)
    copying = Copying(session, session)
    for _ in range(2):
        with qtbot.waitSignal(copying.job.done, timeout=30_000):
            copying.look()
        settle()
    assert len(said) == len(session.shelf.binders)
    assert said[0].startswith("No copy of “")
