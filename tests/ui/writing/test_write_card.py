"""Writing on a card's leaf: own words, and side by side."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtWidgets import QApplication

from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.sources import sources
from tests.ui.writing_desk import CTRL, SHIFT, asked_for, desk, own_data  # noqa: F401
from ui.kit.forms import asking
from ui.writing.choosing.source_dialog import SourceDialog

K = Qt.Key


@pytest.fixture
def star(desk):
    """The Star's leaf, with two lines of one source, open for writing."""
    binder, uid = desk.shelf.card_leaf("major-17")
    sources.new_source(desk.shelf, "Perpetua Lisle", "Upside Down")
    sources.note(binder, uid, "lisle", "Upright", "A light.", "12")
    sources.note(binder, uid, "lisle", "Imagery", "Two jugs.")
    words.write_words(binder, uid, "upright", "Hope.", at="2026-03-01T20:00:00")
    desk.open(uid)
    return binder, uid


def own(star):
    return [(one.way, one.text) for one in words.history(*star)]


def notes(star):
    """The cells in which something is written."""
    return [(n.source, n.aspect, n.text, n.locator) for n in sources.notes(*star) if n.text]


def test_the_keyboard_goes_to_own_words_first(desk, star):
    upright, turned = desk.page.fields.own.editors
    assert upright.hasFocus()
    assert (upright.markdown(), turned.markdown()) == ("Hope.", "")


def test_own_words_are_saved_by_themselves_one_version_a_sitting(desk, star):
    upright, turned = desk.page.fields.own.editors
    desk.press(K.Key_End, into=upright)
    desk.type(" Clear weather", upright)
    desk.until(lambda: own(star)[-1] == ("upright", "Hope. Clear weather"))
    desk.type(" after damage.", upright)
    turned.setFocus()
    desk.type("Hope run thin.", turned)
    desk.until(lambda: ("reversed", "Hope run thin.") in own(star))
    assert own(star) == [
        ("upright", "Hope."),
        ("upright", "Hope. Clear weather after damage."),
        ("reversed", "Hope run thin."),
    ]
    assert leaves.leaf(*star).text == ""


def test_a_later_sitting_makes_another_version(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.type(" One.", upright)
    assert desk.page.save()
    desk.open(star[1])
    desk.type(" Two.", upright)
    assert desk.page.save()
    assert [text for _, text in own(star)] == ["Hope.", "Hope. One.", "Hope. One. Two."]


def test_the_tools_work_in_own_words(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.press(K.Key_A, CTRL, into=upright)
    desk.press(K.Key_B, CTRL, into=upright)
    assert upright.markdown() == "**Hope.**"


def test_own_words_taken_back_elsewhere_are_shown(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.type(" Clear.", upright)
    assert desk.page.save()
    desk.session.undo()
    assert upright.markdown() == "Hope."


def test_notes_are_the_leafs_own_text(desk, star):
    desk.page.texts.body.setFocus()
    desk.type("What I see", desk.page.texts.body)
    assert desk.page.save()
    assert leaves.leaf(*star).text == "What I see"


@pytest.fixture
def sides(desk, star):
    """The table as it is written, the keyboard in its first cell."""
    made = desk.page.fields.sides
    made.grid.setFocus()
    return made


def rows(sides):
    table = sides.fields.table
    return [line.key for line in table.columns], [line.key for line in table.rows]


def test_a_cell_is_chosen_and_changed(desk, star, sides):
    desk.press(K.Key_Down, into=sides.grid)
    assert sides.fields.text.toPlainText() == "Two jugs."
    desk.press(K.Key_Return, into=sides.grid)
    assert sides.fields.text.hasFocus()
    desk.type(" One foot in the pool.", sides.fields.text)
    desk.type("13", sides.fields.locator)
    desk.until(
        lambda: notes(star)[1] == ("lisle", "Imagery", "Two jugs. One foot in the pool.", "13")
    )
    assert notes(star)[0] == ("lisle", "Upright", "A light.", "12")
    desk.press(K.Key_Return, into=sides.fields.locator)
    assert sides.grid.hasFocus()


def test_letters_typed_on_a_cell_begin_it(desk, star, sides):
    sides.begin_row("Reversed")
    sides.grid.setFocus()
    desk.press(K.Key_G, into=sides.grid)
    desk.type("one.", sides.fields.text)
    desk.until(lambda: len(notes(star)) == 3)
    assert notes(star)[2] == ("lisle", "Reversed", "gone.", "")


def test_tab_leads_from_the_words_of_a_cell_to_its_place(desk, star, sides):
    desk.press(K.Key_Tab, into=sides.grid)
    assert sides.fields.text.hasFocus()
    desk.press(K.Key_Tab, into=sides.fields.text)
    assert sides.fields.locator.hasFocus()


def test_the_names_of_rows_are_whole(desk, star, sides):
    sides.begin_row("Reversed")
    header, name = sides.grid.verticalHeader(), "Reversed"
    assert header.width() >= header.sizeHint().width()
    assert header.sizeHint().width() > header.fontMetrics().horizontalAdvance(name)


def test_the_rows_offered_for_a_first_source_stay_once_one_is_written(desk, star, sides):
    binder, uid = desk.shelf.card_leaf("major-18")
    desk.open(uid)
    sides.begin_source("source:lisle")
    desk.type("It shines.", sides.fields.text)
    assert desk.page.save()
    sides.look()
    assert rows(sides) == (["lisle"], ["Upright", "Reversed", "Imagery"])
    assert [note.aspect for note in sources.notes(binder, uid) if note.text] == ["Upright"]
    desk.open(star[1])
    desk.open(uid)
    assert rows(sides) == (["lisle"], ["Upright", "Reversed", "Imagery"])


def test_rows_and_columns_without_words_are_there_another_day(desk, star, sides, orme):
    sides.begin_row("In a spread of one")
    desk.open(desk.shelf.card_leaf("major-18")[1])
    desk.open(star[1])
    assert rows(sides) == (["lisle", "orme"], ["Upright", "Imagery", "In a spread of one"])
    shown = sources.side_by_side(*star, {})
    assert shown.aspects == ("Upright", "Imagery")
    sides.remove(False, 2)
    assert rows(sides)[1] == ["Upright", "Imagery"]


def test_a_row_whose_last_words_go_stays(desk, star, sides):
    desk.press(K.Key_Delete, into=sides.grid)
    assert desk.page.save()
    desk.open(star[1])
    assert rows(sides) == (["lisle"], ["Upright", "Imagery"])
    assert notes(star) == [("lisle", "Imagery", "Two jugs.", "")]


def test_a_row_is_added_and_named(desk, star, sides, monkeypatch):
    monkeypatch.setattr(asking, "line", lambda *words: f"{words[3]} by day")
    desk.qtbot.mouseClick(sides.add_row, Qt.MouseButton.LeftButton)
    assert rows(sides) == (["lisle"], ["Upright", "Imagery", "Reversed by day"])
    desk.type("Gone.", sides.fields.text)
    assert desk.page.save()
    monkeypatch.setattr(asking, "line", lambda *_words: "Turned")
    sides.rename_row(2)
    assert notes(star)[2] == ("lisle", "Turned", "Gone.", "")
    assert rows(sides)[1] == ["Upright", "Imagery", "Turned"]


def test_a_name_that_is_taken_is_said(desk, star, sides, monkeypatch):
    monkeypatch.setattr(asking, "line", lambda *_words: "Upright")
    sides.rename_row(1)
    assert "a row “Upright” already" in desk.page.said.text()
    assert rows(sides)[1] == ["Upright", "Imagery"]


@pytest.fixture
def orme(desk, star, sides):
    """A second source in the table, chosen by typing."""
    made = sources.new_source(desk.shelf, "Tess Orme", "Ferry Cards")
    desk.qtbot.mouseClick(sides.add_source, Qt.MouseButton.LeftButton)
    desk.type("orm", sides.picker.filter)
    desk.press(K.Key_Return, into=sides.picker.filter)
    desk.type("A lamp.", sides.fields.text)
    assert desk.page.save()
    return made


def test_a_source_is_added_by_typing(desk, star, sides, orme):
    assert rows(sides)[0] == ["lisle", "orme"]
    assert ("orme", "Upright", "A lamp.", "") in notes(star)


def test_columns_and_rows_move_with_keys(desk, star, sides, orme):
    sides.grid.setFocus()
    desk.press(K.Key_Left, CTRL | SHIFT, into=sides.grid)
    assert rows(sides) == (["orme", "lisle"], ["Upright", "Imagery"])
    assert sides.grid.current() == ("Upright", "orme")
    desk.press(K.Key_Down, CTRL | SHIFT, into=sides.grid)
    assert rows(sides)[1] == ["Imagery", "Upright"]
    table = sources.side_by_side(*star, {})
    assert [one.key for one in table.sources] == ["orme", "lisle"]
    assert table.aspects == ("Imagery", "Upright")
    desk.session.undo()
    assert rows(sides)[1] == ["Upright", "Imagery"]


def test_columns_move_by_dragging_their_heads(desk, star, sides, orme):
    header = sides.grid.horizontalHeader()
    y = header.height() // 2
    start = QPoint(header.sectionViewportPosition(1) + header.sectionSize(1) // 2, y)
    button, bar = Qt.MouseButton.LeftButton, header.viewport()
    desk.qtbot.mousePress(bar, button, pos=start)
    for x in range(start.x(), 10, -15):
        desk.qtbot.mouseMove(bar, QPoint(x, y))
        QApplication.processEvents()
    desk.qtbot.mouseRelease(bar, button, pos=QPoint(12, y))
    assert rows(sides)[0] == ["orme", "lisle"]
    assert [one.key for one in sources.side_by_side(*star, {}).sources] == ["orme", "lisle"]
    assert header.visualIndex(0) == 0


def test_a_column_taken_away_comes_back_by_undo(desk, star, sides, orme):
    sides.remove(True, 0)
    assert rows(sides)[0] == ["orme"]
    assert [note[0] for note in notes(star)] == ["orme"]
    desk.session.undo()
    assert rows(sides)[0] == ["lisle", "orme"]


def test_a_cell_is_emptied_and_comes_back_by_undo(desk, star, sides):
    desk.press(K.Key_Delete, into=sides.grid)
    assert desk.page.save()
    assert notes(star) == [("lisle", "Imagery", "Two jugs.", "")]
    desk.session.undo()
    assert sides.fields.table.cell(("Upright", "lisle")).text == "A light."


def test_what_they_agree_on_is_the_readers_own(desk, star, sides):
    agree = sides.own[sources.AGREE]
    desk.type("A light far off.", agree)
    assert desk.page.save()
    assert sources.side_by_side(*star, {}).own == {"They agree": "A light far off."}
    desk.open(star[1])
    assert agree.toPlainText() == "A light far off."


def test_a_source_is_made_on_the_way(desk, star, sides):
    def answer():
        dialog = asked_for(SourceDialog)
        if dialog is None:
            QTimer.singleShot(20, answer)
            return
        assert (dialog.author.text(), dialog.title.text()) == ("", "nobody")
        dialog.title.clear()
        dialog.accept()
        assert "needs a title" in dialog.hint.text()
        desk.type("Bram Vesterholt", dialog.author)
        desk.type("The Long Spread", dialog.title)
        desk.press(K.Key_Return, into=dialog.title)

    desk.qtbot.mouseClick(sides.add_source, Qt.MouseButton.LeftButton)
    desk.type("nobody", sides.picker.filter)
    QTimer.singleShot(50, answer)
    desk.press(K.Key_Return, into=sides.picker.filter)
    desk.until(lambda: len(rows(sides)[0]) == 2)
    desk.type("Steer by it.", sides.fields.text)
    assert desk.page.save()
    assert notes(star)[-1] == ("vesterholt", "Upright", "Steer by it.", "")
    practice = desk.shelf.binder("Practice")
    titles = [e.title for e in leaves.contents(practice, tabs.tab(practice, "Sources"))]
    assert titles == ["Upside Down", "The Long Spread"]


def test_what_is_not_in_the_table_yet_is_offered_first(desk, star, sides):
    sources.new_source(desk.shelf, "Zoe Zander", "Last Cards")
    desk.qtbot.mouseClick(sides.add_source, Qt.MouseButton.LeftButton)
    offered = [choice.label for choice in sides.picker.model.rows]
    assert offered == ["Last Cards", "Upside Down", "New source…"]
    desk.press(K.Key_Escape, into=sides.picker.filter)


def test_cells_that_cannot_be_saved_are_said_and_kept(desk, star, sides):
    desk.type(" More.", sides.fields.text)
    star[0].writable = False
    assert not desk.page.save()
    assert "read but not written" in desk.page.said.text()
    star[0].writable = True
    assert desk.page.save()
    assert notes(star)[0][2] == "A light. More."


def test_own_words_with_somebody_elses_in_them_ask_for_the_source(desk, star):
    upright = desk.page.fields.own.editors[0]
    desk.press(K.Key_End, CTRL, into=upright)
    upright.put_text("\n\n> A rest after the Tower.")
    assert "“A rest after the Tower.” has no source yet" in desk.page.bare.text()
    desk.leaf("Plain words")
    assert desk.page.bare.text() == ""


def test_the_menu_of_a_cell_reaches_its_row_and_column(desk, star, sides, orme):
    sides.grid.setFocus()
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(5, 5), QPoint(5, 5))
    QApplication.sendEvent(sides.grid.viewport(), event)
    menu = QApplication.activePopupWidget()
    names = [action.text() for action in menu.actions()]
    assert names == ["Column “Tess Orme”", "Row “Upright”"]
    row = menu.actions()[1].menu()
    down = next(action for action in row.actions() if action.text() == "&Down")
    down.trigger()
    menu.close()
    assert rows(sides)[1] == ["Imagery", "Upright"]
