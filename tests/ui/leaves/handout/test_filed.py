"""A kept file linked to from a leaf lies facing it."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from binder.study.leaves import files, leaves, tabs
from tests.page.markup.written import written
from tests.ui.driving import settle
from ui.leaves.handout.filed import FiledPage


@pytest.fixture
def linked(window):
    """A leaf that links to a kept picture, open at the left."""
    binder = window.session.shelf.binder("Practice")
    picture = Path("resources/pictures/1-open-binder.png")
    data = picture.read_bytes() if picture.exists() else b"no picture"
    uid = files.keep_bytes(binder, "stall.png", "image/png", data)
    leaf = leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "A", f"[the stall](file:{uid})")
    window.session.open_leaf(leaf)
    settle()
    return window, uid


def test_a_link_lays_the_file_facing_and_escape_puts_it_away(linked, qtbot):
    window, uid = linked
    window.cover.leaf("left").followed.emit(f"file:{uid}")
    page = window.cover.leaf("right")
    assert isinstance(page, FiledPage)
    page.wait()
    settle()
    assert len(page.sheets) == 1
    qtbot.keyClick(page, Qt.Key.Key_Escape)
    assert not isinstance(window.cover.leaf("right"), FiledPage)


def test_a_file_that_is_gone_is_said(linked, qtbot):
    window, _ = linked
    with qtbot.waitSignal(window.session.said, timeout=500, raising=False):
        window.cover.leaf("left").followed.emit("file:01a2125a-6e5d-7657-b4c2-03cdb3048d13")
    assert "no longer kept" in window.said.text()


def test_words_of_a_linked_file_are_found_but_nothing_is_written_about_it(window, qtbot):
    binder = window.session.shelf.binder("Practice")
    data = written("Low water.", "High water at noon.")
    uid = files.keep_bytes(binder, "tides.pdf", "application/pdf", data)
    tab = tabs.tab(binder, "Clippings")
    window.session.open_leaf(leaves.add_leaf(binder, tab, "A", f"[tides](file:{uid})"))
    window.cover.leaf("left").followed.emit(f"file:{uid}")
    page = window.cover.leaf("right")
    for _ in range(3):
        page.wait()
        settle()
    qtbot.keyClicks(page.find_row.field, "noon")
    qtbot.keyClick(page.find_row.field, Qt.Key.Key_Return)
    for _ in range(3):
        page.wait()
        settle()
    assert (page.number, page.find_row.told.text()) == (1, "1 of 1")
    assert not page.tick.isVisible()
    assert not page.beside.isVisible()
    assert binder.sql("SELECT count(*) FROM filed_text WHERE file = ?", (uid,)) == [(0,)]
