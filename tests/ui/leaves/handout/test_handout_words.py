"""Words on the sheets of a handout: selected, found, noted beside; real keys and clicks."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from tests.ui.driving import double_click, follow
from tests.ui.handouts import pdf_of, settle, show  # noqa: F401


def written(*pages):
    """A PDF with those words, a page for each, from another library than the one that reads it."""
    import typst

    body = "\n#pagebreak()\n".join(pages)
    source = f'#set page(width: 300pt, height: 400pt)\n#set text(lang: "en")\n{body}'
    return typst.compile(source.encode(), format="pdf")


TALK = ("The Hermit walks twice.", "Éclairs by *moonlight*, and a hermit crab.", "Nothing here.")


@pytest.fixture
def talk(show):
    return show(("talk.pdf", "application/pdf", written(*TALK)))


def place_of(page, word):
    """Where a word stands in the view, its first and last letter."""
    at = page.view.words.letters.text.index(word)
    boxes = [page.view.placed(page.view.words.box(n)) for n in (at, at + len(word) - 1)]
    return [box.center().toPoint() for box in boxes]


def test_words_are_selected_with_the_mouse_and_copied(talk, qtbot):
    first, last = place_of(talk, "Hermit walks")
    qtbot.mousePress(talk.view, Qt.MouseButton.LeftButton, pos=first)
    qtbot.mouseMove(talk.view, last)
    qtbot.mouseRelease(talk.view, Qt.MouseButton.LeftButton, pos=last)
    qtbot.keyClick(talk.view, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QApplication.clipboard().text() == "Hermit walks"
    double_click(talk.view, place_of(talk, "twice")[0])
    assert talk.view.words.text() == "twice"
    assert talk.view.zoom == 1.0
    qtbot.keyClick(talk.view, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    assert talk.view.words.text() == TALK[0]
    nowhere = QPoint(5, talk.view.height() - 5)
    qtbot.mouseClick(talk.view, Qt.MouseButton.LeftButton, pos=nowhere)
    assert talk.view.words.text() == ""
    talk.view.grab()


def test_words_are_found_within_the_handout(talk, qtbot):
    qtbot.keyClick(talk.view, "/")
    assert talk.find_row.field.hasFocus()
    qtbot.keyClicks(talk.find_row.field, "HERMIT")
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert talk.find_row.told.text() == "1 of 2"
    assert talk.number == 0
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert talk.number == 1
    assert talk.view.words.letters.text[slice(*talk.view.words.current)] == "hermit"
    qtbot.mouseClick(talk.find_row.after, Qt.MouseButton.LeftButton)
    settle(qtbot, talk)
    assert (talk.number, talk.find_row.told.text()) == (0, "1 of 2")
    talk.find_row.field.clear()
    qtbot.keyClicks(talk.find_row.field, "eclairs by moon")
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Return)
    settle(qtbot, talk)
    assert (talk.number, talk.find_row.told.text()) == (1, "1 of 1")
    qtbot.keyClicks(talk.find_row.field, "zzz")
    qtbot.waitUntil(lambda: talk.find_row.told.text() == "not found", timeout=2000)
    qtbot.keyClick(talk.find_row.field, Qt.Key.Key_Escape)
    assert talk.view.hasFocus()


def test_find_on_the_shelf_opens_the_page_with_the_word(talk, session, qtbot):
    from binder.study.overview.finding import find_all, marked_words

    (group,) = find_all(session.shelf, "eclairs").groups
    assert group.hits[0].uid == talk.spot.leaf
    talk.show_spot(talk.spot, tuple(marked_words(group.hits[0])))
    settle(qtbot, talk)
    settle(qtbot, talk)
    assert talk.number == 1
    assert talk.view.words.letters.text[slice(*talk.view.words.current)] == "Éclairs"


def test_words_found_in_the_notes_are_not_sought_on_the_sheets(talk, qtbot):
    talk.show_spot(talk.spot, ("mine",))
    settle(qtbot, talk)
    settle(qtbot, talk)
    assert talk.number == 0
    assert talk.find_row.field.text() == talk.find_row.told.text() == ""
    assert talk.notes.first_mark() is not None


def test_tab_reaches_everything_on_the_leaf(talk, qtbot):
    talk.tick.setFocus()
    reached = []
    for _ in range(9):
        qtbot.keyClick(talk.window().focusWidget(), Qt.Key.Key_Tab)
        reached.append(talk.window().focusWidget())
    wanted = (talk.bar.count, talk.bar.after, talk.bar.larger, talk.find_row.field, talk.view,
              talk.beside.link)  # fmt: skip
    places = [reached.index(part) for part in wanted]
    assert places == sorted(places)
    assert all(part.accessibleName() or part.text() for part in wanted)


def test_a_scan_says_quietly_that_it_holds_no_words(show):
    page = show(("scan.pdf", "application/pdf", pdf_of((300, 400))))
    assert "as in a scan" in page.quiet.toPlainText()
    assert not page.find_row.isVisible()


def test_the_wheel_scrolls_and_then_turns_sheets(talk, monkeypatch):
    def wheel(by):
        event = QWheelEvent(
            QPointF(50, 50), QPointF(50, 50), QPoint(), QPoint(0, by), Qt.MouseButton.NoButton,
            Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(talk.view, event)

    bar = talk.verticalScrollBar()
    bar.setValue(bar.minimum())
    if bar.maximum():
        wheel(-120)
        assert talk.number == 0
    bar.setValue(bar.maximum())
    monkeypatch.setattr("ui.leaves.handout.sheet_view.WHEEL_PAUSE", 0)
    wheel(-120)
    assert talk.number == 1
    monkeypatch.setattr("ui.leaves.handout.sheet_view.WHEEL_PAUSE", 1e9)
    bar.setValue(bar.maximum())
    wheel(-120)
    assert talk.number == 1  # a spin does not run off
    monkeypatch.setattr("ui.leaves.handout.sheet_view.WHEEL_PAUSE", 0)
    bar.setValue(bar.minimum())
    wheel(120)
    assert talk.number == 0


def test_a_sheet_is_asked_for_by_its_number(talk, monkeypatch, qtbot):
    from PySide6.QtWidgets import QInputDialog

    monkeypatch.setattr(QInputDialog, "getInt", lambda *_: (3, True))
    qtbot.mouseClick(talk.bar.count, Qt.MouseButton.LeftButton)
    assert talk.bar.count.text() == "Sheet 3 of 3"


# Notes beside pages


def test_notes_stand_beside_their_pages_and_are_listed(talk, session, qtbot):
    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(talk.beside.editor, "Why *twice*?")
    qtbot.keyClick(talk.beside.editor, Qt.Key.Key_Escape)
    assert talk.beside_note.toPlainText() == "Why twice?"
    talk.step(2)
    settle(qtbot, talk)
    assert not talk.beside_note.isVisible()
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    qtbot.keyClicks(talk.beside.editor, "The last one.")
    talk.step(-1)
    assert talk.list.toPlainText().splitlines() == ["Page 1", "Why twice?", "Page 3",
                                                    "The last one."]  # fmt: skip
    follow(talk.list, talk.list.links()[1])
    assert talk.number == 2
    binder = session.binder_of(talk.spot)
    assert binder.gate.undo() == "Write beside page 3"
    assert talk.list.toPlainText().splitlines() == ["Page 1", "Why twice?"]
    talk.turn_to(0)
    qtbot.mouseClick(talk.beside.link, Qt.MouseButton.LeftButton)
    talk.beside.editor.selectAll()
    qtbot.keyClick(talk.beside.editor, Qt.Key.Key_Delete)
    session.leaving.emit()
    assert not talk.list.isVisible()


def test_a_note_being_written_is_saved_by_itself_and_stays_open(talk, session, qtbot):
    from binder.study.handouts.page_notes import page_notes

    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    talk.beside.write()
    qtbot.keyClicks(talk.beside.editor, "Half a th")
    binder = session.binder_of(talk.spot)
    qtbot.waitUntil(lambda: len(page_notes(binder, talk.spot.leaf)) == 1, timeout=5000)
    assert talk.beside.writing
    assert talk.beside.editor.hasFocus()
    qtbot.keyClicks(talk.beside.editor, "ought")
    talk.beside.shut()
    assert [note.text for note in page_notes(binder, talk.spot.leaf)] == ["Half a thought"]


# On paper


def test_a_handout_is_ticked_off_as_printed(talk, session, qtbot):
    from binder.study.handouts import on_paper

    session.changed.connect(lambda _notice: talk.show_spot(talk.spot))
    binder = session.binder_of(talk.spot)
    qtbot.mouseClick(talk.tick, Qt.MouseButton.LeftButton, pos=QPoint(8, talk.tick.height() // 2))
    assert on_paper.ticked(binder, talk.spot.leaf)
    assert talk.tick.text().startswith("Printed and filed on paper, ")
    qtbot.keyClick(talk.tick, Qt.Key.Key_Space)
    assert not on_paper.ticked(binder, talk.spot.leaf)
    assert binder.gate.undo() == "Untick as printed"
    assert talk.tick.isChecked()
