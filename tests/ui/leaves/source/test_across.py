"""A source across cards, with real keys and clicks in the window."""

import pytest
from PySide6.QtCore import Qt

from binder.study.sources import sources
from tests.paper.reading_back import bare, texts
from tests.ui.driving import double_click, settle
from ui.actions.installed import actions_of
from ui.kit.forms import asking

K, LEFT = Qt.Key, Qt.MouseButton.LeftButton


@pytest.fixture
def screen(window):
    """The screen, opened from the leaf of a source through its button."""
    key = "tenpenny"
    window.session.open_leaf(sources.sources(window.session.shelf)[key].leaf_uid)
    window.actions_by_name["across"].trigger()
    made = actions_of(window).across_screen
    yield made
    made.keeping.leave()


def rows(screen):
    return [line.name for line in screen.fields.table.rows]


def choose(screen, name):
    screen.sets.setCurrentIndex(screen.sets.findText(name))
    screen.sets.activated.emit(screen.sets.currentIndex())


def said(window, card):
    binder, uid = window.session.shelf.card_leaf(card)
    return {(n.aspect, n.text, n.locator) for n in sources.notes(binder, uid)
            if n.source == "tenpenny"}  # fmt: skip


def test_it_opens_with_the_cards_the_source_speaks_of(window, screen):
    assert screen.isVisible()
    assert "The Star" in rows(screen)
    assert [line.key for line in screen.fields.table.columns][:3] == list(sources.USUAL)
    assert screen.fields.grid.hasFocus()


def test_a_set_is_chosen_and_written_in(window, screen, qtbot):
    choose(screen, "Courts of Cups")
    assert len(rows(screen)) == 4
    grid = screen.fields.grid
    grid.setFocus()
    qtbot.keyClick(grid, K.Key_Down)
    qtbot.keyClick(grid, K.Key_Delete)
    qtbot.keyClick(grid, K.Key_F)
    qtbot.keyClicks(screen.fields.text, "ull to the brim.")
    qtbot.keyClicks(screen.fields.locator, "31")
    qtbot.keyClick(screen.fields.locator, K.Key_Return)
    assert grid.hasFocus()
    qtbot.waitUntil(lambda: ("Upright", "full to the brim.", "31") in said(window, "cups-12"))
    window.session.undo()
    assert screen.fields.table.cell(("cups-12", "Upright")).text != "full to the brim."


def test_words_are_saved_when_another_set_is_chosen(window, screen, qtbot):
    choose(screen, "Courts of Cups")
    qtbot.keyClicks(screen.fields.text, "A spark.")
    choose(screen, "Third septenary")
    assert ("Upright", "A spark.", "") in said(window, "cups-11")


def test_a_column_is_added(window, screen, qtbot, monkeypatch):
    monkeypatch.setattr(asking, "line", lambda *_words: "Weather")
    qtbot.mouseClick(screen.add, LEFT)
    assert screen.fields.table.columns[-1].key == "Weather"


def test_a_row_leads_to_the_leaf_of_its_card(window, screen, qtbot):
    choose(screen, "Third septenary")
    header = screen.fields.grid.verticalHeader()
    y = header.sectionViewportPosition(2) + 5
    at = header.viewport().rect().topLeft()
    at.setX(10)
    at.setY(y)
    double_click(header.viewport(), at)
    assert window.session.leaf_of(window.session.left).title == "The Star"
    assert not screen.isVisible()


def test_escape_leads_back_and_words_are_kept(window, screen, qtbot):
    choose(screen, "Courts of Cups")
    qtbot.keyClicks(screen.fields.text, "A spark.")
    qtbot.keyClick(screen.fields.text, K.Key_Escape)
    assert not screen.isVisible()
    assert ("Upright", "A spark.", "") in said(window, "cups-11")


def test_words_that_cannot_be_saved_are_said_and_kept(window, screen, qtbot):
    choose(screen, "Courts of Cups")
    binder = window.session.shelf.card_leaf("cups-11")[0]
    binder.writable = False
    qtbot.keyClicks(screen.fields.text, "A spark.")
    screen.keeping.keep()
    assert "Not saved yet" in screen.hint.text()
    binder.writable = True
    screen.keeping.keep()
    assert screen.hint.text() == ""
    assert ("Upright", "A spark.", "") in said(window, "cups-11")


def test_it_is_printed(window, screen, qtbot):
    choose(screen, "Major Arcana")
    qtbot.mouseClick(screen.print_button, LEFT)
    proof = actions_of(window).proof
    proof.wait()
    qtbot.waitUntil(lambda: proof.printed is not None)
    page = "".join(texts(proof.printed.pdf))
    assert bare("Rest you have earned; help that asks for nothing back. (p. 112)") in page
    assert bare("The Star") in page


def test_nothing_is_wider_than_the_desk(window, screen):
    window.resize(1100, 700)
    assert screen.width() <= window.width()
    assert screen.fields.form.isVisible()


def test_the_choices_give_way_in_a_small_window_with_letters_twice_as_large(window):
    window.resize(1100, 700)
    window.look.set_scale(2.0)
    settle()
    actions_of(window).across("tenpenny")
    screen = actions_of(window).across_screen
    settle()
    for box in (screen.which, screen.sets):
        right = box.mapTo(screen, box.rect().topRight()).x()
        assert 0 < right <= screen.width(), box.accessibleName()
    screen.keeping.leave()
