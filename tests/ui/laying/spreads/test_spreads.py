"""The library of spreads with real clicks and keys."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QInputDialog

from binder.cards.spreads import SPREADS, spread
from binder.store.clock import OtherDay
from binder.study.spreads import spread_files, spreads
from tests.ui.driving import double_click
from ui.laying.spreads.spread_editor import SpreadEditor
from ui.laying.spreads.spreads import SpreadsDialog
from ui.session.session import Session

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def dialog(qtbot, look, course_shelf):
    session = Session(course_shelf, OtherDay(date(2026, 11, 25)))
    session.open_binder(course_shelf.binder("Practice").uid)
    made = SpreadsDialog(session, look)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    yield made
    session.deleteLater()


def press(dialog, name):
    QTest.mouseClick(dialog.buttons[name], LEFT)


def own(shelf):
    return [v.spread for v in spreads.library(shelf, retired=True) if v.own]


def go(dialog, name):
    """Choose a spread by its name."""
    names = [entry.title for entry in dialog.list.entries]
    dialog.list.setCurrentIndex(dialog.list.model().index(names.index(name), 0))


def answer(kind, act):
    """Answer the next modal window of a kind."""

    def look_for():
        box = QApplication.activeModalWidget()
        if isinstance(box, kind):
            act(box)
        else:
            QTimer.singleShot(10, look_for)

    QTimer.singleShot(0, look_for)


def test_the_library_shows_layout_places_and_source(dialog):
    assert [entry.title for entry in dialog.list.entries] == [known.name for known in SPREADS]
    dialog.list.setFocus()
    for _ in range(4):
        QTest.keyClick(dialog.list, Qt.Key.Key_Down)
    assert dialog.heading.accessibleName() == "Celtic Cross"
    assert "Waite 1911" in dialog.heading.accessibleDescription()
    assert dialog.places.text().startswith("1  The matter: What surrounds the question?")
    assert len(dialog.layout_view.places()) == 10


def test_the_programs_own_are_duplicated_not_changed(dialog, course_shelf):
    go(dialog, "Horseshoe")
    assert not dialog.buttons["change"].isEnabled()
    spot = dialog.list.visualRect(dialog.list.currentIndex()).center()
    double_click(dialog.list.viewport(), spot)
    assert "duplicate it to change it" in dialog.wrong.text()
    press(dialog, "duplicate")
    assert [each.name for each in own(course_shelf)] == ["Horseshoe, copy"]
    assert dialog.list.key == "horseshoe-copy"
    assert dialog.buttons["change"].isEnabled()


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_among_the_spreads_presses_no_button(dialog, course_shelf, key):
    made = replace(spread("three-card"), name="My three")
    spreads.add_spread(course_shelf, course_shelf.binder("Practice"), made)
    go(dialog, "My three")
    dialog.list.setFocus()
    pressed = []
    for name, button in dialog.buttons.items():
        button.pressed.connect(lambda name=name: pressed.append(name))
    answer(SpreadEditor, SpreadEditor.reject)
    QTest.keyClick(dialog.list, key)
    QApplication.processEvents()
    assert pressed == []
    assert dialog.isVisible()
    assert not any(button.isDefault() for button in dialog.buttons.values())


def test_a_new_spread_is_made_and_kept(dialog, course_shelf):
    def make(editor):
        QTest.keyClicks(editor.name, "celtic cross")
        middle = editor.table.geometry_now().point(0, 0).toPoint()
        double_click(editor.table, middle)
        QTest.mouseClick(editor.keep, LEFT)
        assert "already" in editor.wrong.text()
        editor.name.clear()
        QTest.keyClicks(editor.name, "A single stone")
        QTest.mouseClick(editor.keep, LEFT)

    answer(SpreadEditor, make)
    press(dialog, "new")
    (made,) = own(course_shelf)
    assert (made.key, len(made.places)) == ("a-single-stone", 1)
    assert dialog.list.key == "a-single-stone"


def test_an_own_spread_is_changed_renamed_and_retired(dialog, course_shelf):
    spreads.add_spread(course_shelf, course_shelf.binder("Practice"),
                       replace(spread("three-card"), name="My three"))  # fmt: skip
    go(dialog, "My three")

    def change(editor):
        editor.draft.choose([3])
        QTest.keyClick(editor.table, Qt.Key.Key_Delete)
        QTest.mouseClick(editor.keep, LEFT)

    answer(SpreadEditor, change)
    press(dialog, "change")
    assert len(own(course_shelf)[0].places) == 2

    def rename(box):
        box.setTextValue("My two")
        box.accept()

    answer(QInputDialog, rename)
    press(dialog, "rename")
    assert dialog.heading.accessibleName() == "My two"
    press(dialog, "retire")
    assert dialog.list.entries[-1].note == "retired; two places"
    assert dialog.buttons["retire"].text() == "Bring back"
    assert len(spreads.spreads(course_shelf)) == len(SPREADS)
    press(dialog, "retire")
    assert len(spreads.spreads(course_shelf)) == len(SPREADS) + 1


@pytest.fixture
def files(dialog, monkeypatch):
    """Presses a button and answers the system's question for a file: files("open", path)."""

    def answered(button, path):
        for asked in ("getOpenFileName", "getSaveFileName"):
            monkeypatch.setattr(QFileDialog, asked, lambda *_asked: (str(path), ""))
        press(dialog, button)

    return answered


def test_saved_to_a_file_and_opened_on_another_shelf(dialog, files, course_shelf, tmp_path):
    made = replace(spread("three-card"), name="My three")
    path = spread_files.save(made, tmp_path / "mine")
    files("open", path)
    assert dialog.list.key == "my-three"
    files("open", path)
    assert "in the library already" in dialog.wrong.text()
    files("save", tmp_path / "again")
    assert spread_files.opened(tmp_path / "again.spread.json").places == made.places
    changed = replace(made, places=made.places[:2])
    files("open", spread_files.save(changed, tmp_path / "changed"))
    assert [each.name for each in own(course_shelf)] == ["My three", "My three 2"]


def test_a_file_with_a_script_is_one_sentence_and_changes_nothing(
    dialog, files, course_shelf, tmp_path
):
    path = tmp_path / "odd.spread.json"
    text = spread_files.written(spread("three-card"))
    path.write_text(text.replace("Past", "<script>alert(1)</script>"), encoding="utf-8")
    files("open", path)
    assert dialog.wrong.text() == (
        "“odd.spread.json” was not opened: The label of place 1 is to be plain words; "
        "take out the marks that are none."
    )
    assert own(course_shelf) == []


def test_undone_elsewhere_it_shows_what_is_true(dialog, course_shelf):
    press(dialog, "duplicate")
    assert len(dialog.list.entries) == len(SPREADS) + 1
    course_shelf.binder("Practice").gate.undo()
    assert len(dialog.list.entries) == len(SPREADS)


def test_in_lamp_light_and_larger_it_still_fits(dialog, look):
    look.set_name("lamp")
    look.set_scale(1.5)
    QApplication.processEvents()
    assert dialog.buttons["shut"].isVisible()
    bottom = dialog.buttons["shut"].mapTo(dialog, dialog.buttons["shut"].rect().bottomLeft())
    assert dialog.rect().contains(bottom)
