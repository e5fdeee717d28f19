"""Choosing what to link to, by keyboard."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer

from binder.study.leaves import leaves
from binder.study.sources import sources
from tests.ui.driving import answering, presses
from tests.ui.writing_desk import CTRL, SHIFT, asked_for, desk, own_data  # noqa: F401
from ui.writing.choosing.source_dialog import SourceDialog

K = Qt.Key


def picker(desk, key, modifiers):
    desk.press(key, modifiers)
    found = desk.page.hands.asking.picker
    desk.until(lambda: found.isVisible())
    return found


def test_a_card_is_linked_by_a_few_letters(desk):
    desk.leaf("see ")
    desk.press(K.Key_End)
    found = picker(desk, K.Key_K, CTRL)
    assert found.model.rowCount() == 78
    desk.type("que cu", found.filter)
    desk.press(K.Key_Return, into=found.filter)
    assert desk.text() == "see [Queen of Cups](card:cups-13)"
    desk.until(lambda: desk.editor.hasFocus())


def test_the_words_selected_become_the_link(desk):
    desk.leaf("see her there")
    desk.caret(4, 7)
    found = picker(desk, K.Key_K, CTRL)
    desk.type("star", found.filter)
    desk.press(K.Key_Return, into=found.filter)
    assert desk.text() == "see [her](card:major-17) there"


def test_arrows_walk_the_lines(desk):
    desk.leaf()
    found = picker(desk, K.Key_K, CTRL)
    for _ in range(3):
        desk.press(K.Key_Down, into=found.filter)
    desk.press(K.Key_Up, into=found.filter)
    desk.press(K.Key_Return, into=found.filter)
    assert desk.text() == "[The High Priestess](card:major-02)"


def test_a_click_takes_a_line(desk):
    desk.leaf()
    found = picker(desk, K.Key_K, CTRL)
    rect = found.list.visualRect(found.model.index(1))
    desk.qtbot.mouseClick(found.list.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    assert desk.text() == "[The Magician](card:major-01)"


def test_escape_changes_nothing_and_gives_the_keyboard_back(desk):
    desk.leaf("words")
    found = picker(desk, K.Key_K, CTRL)
    desk.press(K.Key_Escape, into=found.filter)
    assert desk.text() == "words"
    desk.until(lambda: desk.editor.hasFocus())


def test_a_leaf_is_found_by_its_title(desk):
    other = desk.add("", title="Kiln log, July")
    desk.leaf()
    found = picker(desk, K.Key_K, CTRL | SHIFT)
    assert "Kiln log, July" in [choice.label for choice in found.model.rows]
    desk.type("kiln", found.filter)
    desk.until(lambda: [choice.label for choice in found.model.rows] == ["Kiln log, July"])
    desk.press(K.Key_Return, into=found.filter)
    assert desk.text() == f"[Kiln log, July](leaf:{other})"


def test_a_source_is_linked_with_its_page(desk):
    sources.new_source(desk.shelf, "Perpetua Lisle", "Upside Down")
    desk.leaf()
    found = picker(desk, K.Key_S, CTRL | SHIFT)
    desk.type("lis", found.filter)
    desk.press(K.Key_Return, into=found.filter)
    assert found.locator.hasFocus()
    desk.type("112", found.locator)
    desk.press(K.Key_Return, into=found.locator)
    assert desk.text() == "[p. 112](source:lisle#p112)"


def test_a_quotation_carries_its_source(desk):
    sources.new_source(desk.shelf, "Perpetua Lisle", "Upside Down")
    desk.leaf("Mine.\n\n> The lamp shows the road.\n")
    assert "“The lamp shows the road.” has no source yet" in desk.page.bare.text()
    desk.caret(12)
    found = picker(desk, K.Key_G, CTRL | SHIFT)
    desk.type("lis", found.filter)
    desk.press(K.Key_Return, into=found.filter)
    desk.type("note 4", found.locator)
    desk.press(K.Key_Return, into=found.locator)
    assert desk.text() == (
        "Mine.\n\n> The lamp shows the road.\n>\n> Perpetua Lisle, [note 4](source:lisle#note4)\n"
    )
    assert desk.page.bare.text() == ""


def test_a_source_that_is_new_is_cited_at_once(desk):
    def answer():
        dialog = asked_for(SourceDialog)
        if dialog is None:
            QTimer.singleShot(20, answer)
            return
        carried.append((dialog.author.text(), dialog.title.text(), dialog.where.currentText()))
        desk.type(": a Year", dialog.title)
        desk.press(K.Key_Return, into=dialog.title)

    carried, told = [], []
    desk.session.said.connect(told.append)
    desk.leaf()
    found = picker(desk, K.Key_S, CTRL | SHIFT)
    desk.type("Orme, Ferry Cards", found.filter)
    QTimer.singleShot(50, answer)
    desk.press(K.Key_Return, into=found.filter)
    desk.until(lambda: desk.text() == "[Ferry Cards: a Year](source:orme)")
    assert carried == [("Orme", "Ferry Cards", "Sources, in Practice")]
    assert told == ["The leaf of “Ferry Cards: a Year” is behind Sources, in Practice."]


def test_no_source_is_said_only_of_words_that_were_typed(desk):
    desk.leaf()
    found = picker(desk, K.Key_S, CTRL | SHIFT)
    assert [choice.label for choice in found.model.rows] == ["New source…"]
    assert not found.nothing.isVisible()
    desk.type("x", found.filter)
    assert found.nothing.isVisible()
    desk.press(K.Key_Escape, into=found.filter)


def test_escape_asks_before_a_source_half_told_goes(desk, qtbot):
    dialog = SourceDialog(desk.session, desk.page.look, desk.page)
    qtbot.addWidget(dialog)
    dialog.show()
    desk.type("Ferry Cards", dialog.title)
    answering(presses("Go on writing"))
    desk.press(K.Key_Escape, into=dialog.title)
    assert dialog.isVisible()
    answering(presses("Let it go"))
    desk.press(K.Key_Escape, into=dialog.title)
    assert not dialog.isVisible()


def test_a_new_source_may_go_behind_a_tab_of_this_binder(desk):
    def answer():
        dialog = asked_for(SourceDialog)
        if dialog is None:
            QTimer.singleShot(20, answer)
            return
        places = [dialog.where.itemText(n) for n in range(dialog.where.count())]
        wanted = next(one for one in places if one.startswith("Clippings, in"))
        dialog.where.setCurrentText(wanted)
        desk.press(K.Key_Return, into=dialog.title)

    desk.leaf()
    found = picker(desk, K.Key_S, CTRL | SHIFT)
    desk.type("Ferry Cards", found.filter)
    QTimer.singleShot(50, answer)
    desk.press(K.Key_Return, into=found.filter)
    desk.until(lambda: desk.text() == "[Ferry Cards](source:ferrycards)")
    made = sources.sources(desk.shelf)["ferrycards"]
    home = desk.shelf.home_of(made.leaf_uid)
    assert home is desk.session.binder
    assert leaves.leaf(home, made.leaf_uid).tab == "Clippings"


@pytest.mark.parametrize(
    ("key", "modifiers", "words"),
    [(K.Key_K, CTRL, "No card"), (K.Key_K, CTRL | SHIFT, "No leaf"),
     (K.Key_S, CTRL | SHIFT, "No source")],
)  # fmt: skip
def test_nothing_found_is_said(desk, key, modifiers, words):
    desk.leaf("text")
    found = picker(desk, key, modifiers)
    desk.type("zzzz", found.filter)
    desk.until(lambda: found.nothing.isVisible())
    assert words in found.nothing.text()
    # Enter would make a source that is not there yet, see above.
    desk.press(K.Key_Escape if words == "No source" else K.Key_Return, into=found.filter)
    assert desk.text() == "text"


def test_the_slip_stays_on_the_screen(desk):
    desk.leaf()
    found = picker(desk, K.Key_K, CTRL)
    assert found.screen().availableGeometry().contains(found.geometry())
    found.open_at(QPoint(40, found.screen().availableGeometry().bottom() + 500))
    assert found.screen().availableGeometry().contains(found.geometry())
